import { h, render } from 'preact'

render(h('leadline-dock', { catalog: window.shop }), document.querySelector('#app'))
