// The demonstration's own page script: here a shop would send the request on. Nothing leaves this page.
document.addEventListener('leadline-request', (event) => {
  event.preventDefault()
})
