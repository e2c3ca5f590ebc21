const element = document.createElement('leadline-dock')
element.setAttribute('start', 'example')
element.catalog = window.shop
document.querySelector('#app').append(element)
