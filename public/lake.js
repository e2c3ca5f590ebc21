/** The demo's page at the lake, in the language that was chosen where docks are planned. */
import { chosen, speak } from './site-language.js'

const TITLES = {
  de: 'Leadline am See',
  fr: 'Leadline au lac',
  es: 'Leadline en el lago',
}

const lang = chosen()
if (lang !== 'en') {
  document.title = TITLES[lang]
  speak(lang)
}
