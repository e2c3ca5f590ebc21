const frame = document.querySelector('iframe[data-leadline]')
const answer = document.querySelector('#answer')

document.querySelector('#metric').addEventListener('click', () => {
  frame.leadline.set({ attributes: { units: 'metric' } })
})
document.querySelector('#design').addEventListener('click', async () => {
  const design = await frame.leadline.ask('design')
  answer.textContent = `${design.name}: ${design.site.soundings.length} depths, ${design.dock.sections} sections`
})
frame.addEventListener('leadline-change', ({ detail }) => {
  answer.textContent = `Changed: ${detail.design.dock.sections} sections, check code ${detail.fingerprint.all.slice(0, 12)}`
})
