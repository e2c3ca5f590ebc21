// Properties are set while the element is still a plain one; the script comes after.
const element = document.querySelector('leadline-dock')
const { design } = await (await fetch('./small.json')).json().then((design) => ({ design }))
element.design = design
await import('./leadline.js')
