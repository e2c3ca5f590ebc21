/** The demo page's own: in which language it is, and the planner in it. */
import { chosen, keep, speak as speakSite } from './site-language.js'

const TEXTS = {
  en: {
    title: 'Leadline: plan a dock on your own shore',
    head: 'Your dock, in your own water',
    lead: 'Type a few depths off your shore and see the dock that stands there: its legs, its weight, its price.',
    note: 'Lake, shop and prices are invented.',
    language: 'Language',
    lake: 'At the lake',
  },
  de: {
    title: 'Leadline: ein Steg an Ihrem eigenen Ufer',
    head: 'Ihr Steg in Ihrem See',
    lead: 'Geben Sie ein paar Tiefen vor Ihrem Ufer ein und sehen Sie den Steg, der dort steht: Stützen, Gewicht, Preis.',
    note: 'See, Betrieb und Preise sind erfunden.',
    language: 'Sprache',
    lake: 'Am See',
  },
  fr: {
    title: 'Leadline : un quai sur votre propre rive',
    head: 'Votre quai, dans votre eau',
    lead: 'Entrez quelques profondeurs au large de votre rive et voyez le quai qui y tient : ses pattes, son poids, son prix.',
    note: 'Le lac, l’atelier et les prix sont inventés.',
    language: 'Langue',
    lake: 'Au lac',
  },
  es: {
    title: 'Leadline: un muelle en su propia orilla',
    head: 'Su muelle, en su propia agua',
    lead: 'Escriba algunas profundidades frente a su orilla y vea el muelle que se sostiene allí: sus patas, su peso, su precio.',
    note: 'El lago, el taller y los precios son inventados.',
    language: 'Idioma',
    lake: 'En el lago',
  },
}

const choice = document.querySelector('#language')

function speak(lang) {
  const { title, head, lead, note, language, lake } = TEXTS[lang]
  document.title = title
  document.querySelector('h1').textContent = head
  document.querySelector('#lead').textContent = lead
  document.querySelector('#lake').textContent = lake
  document.querySelector('small').textContent = note
  choice.setAttribute('aria-label', language)
  choice.value = lang
  speakSite(lang)
}

const first = chosen()
if (first !== 'en') speak(first)
choice.addEventListener('change', () => {
  keep(choice.value)
  speak(choice.value)
})
