const element = document.createElement('leadline-dock')
element.catalog = window.shop
document.querySelector('#app').append(element)
