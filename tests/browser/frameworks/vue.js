import { createApp, h } from 'vue'

createApp({ render: () => h('leadline-dock', { catalog: window.shop, start: 'example' }) }).mount('#app')
