import { h, render } from 'preact'

render(h('leadline-dock', { catalog: window.shop, start: 'example' }), document.querySelector('#app'))
