import { createElement } from 'react'
import { createRoot } from 'react-dom/client'

createRoot(document.querySelector('#app')).render(
  createElement('leadline-dock', { catalog: window.shop, start: 'example' }),
)
