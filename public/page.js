/** The demo pages' own: in which language they are (what has `data-text`), and the planner or the catalog editor in them. As chosen here last, else as the browser is set. */
const KEY = 'leadline-demo-language'
const TEXTS = {
  en: {
    title: 'Leadline: plan a dock on your own shore',
    head: 'Your dock, in your own water',
    lead: 'Type a few depths off your shore and see the dock that stands there: its legs, its weight, its price.',
    note: 'Lake, shop and prices are invented.',
    language: 'Language',
    lake: 'At the lake',
    lakeTitle: 'Leadline at the lake',
    ready: 'This page now works with no signal.',
    update: 'A newer version of this page is here. Nothing you made is lost.',
    use: 'Use it now',
    elsewhere: 'A newer version is in use in another window. Nothing you made is lost.',
    load: 'Load it here',
    editorTitle: "Leadline: make your shop's catalog",
    editorHead: "Your shop's catalog",
    editorLead: 'Say what you make and what it costs; the dock beside it is built of it.',
    editorNote: 'It begins with an invented shop.',
    howTo: 'How to',
  },
  de: {
    title: 'Leadline: ein Steg an Ihrem eigenen Ufer',
    head: 'Ihr Steg in Ihrem See',
    lead: 'Geben Sie ein paar Tiefen vor Ihrem Ufer ein und sehen Sie den Steg, der dort steht: Stützen, Gewicht, Preis.',
    note: 'See, Betrieb und Preise sind erfunden.',
    language: 'Sprache',
    lake: 'Am See',
    lakeTitle: 'Leadline am See',
    ready: 'Diese Seite läuft jetzt auch ohne Netz.',
    update: 'Eine neuere Fassung dieser Seite ist da. Es geht nichts verloren.',
    use: 'Jetzt verwenden',
    elsewhere: 'In einem anderen Fenster läuft schon eine neuere Fassung. Es geht nichts verloren.',
    load: 'Hier laden',
    editorTitle: 'Leadline: der Katalog Ihres Betriebs',
    editorHead: 'Der Katalog Ihres Betriebs',
    editorLead: 'Sagen Sie, was Sie herstellen und was es kostet; der Steg daneben wird daraus gebaut.',
    editorNote: 'Am Anfang steht ein erfundener Betrieb.',
    howTo: 'Anleitung (englisch)',
  },
  fr: {
    title: 'Leadline : un quai sur votre propre rive',
    head: 'Votre quai, dans votre eau',
    lead: 'Entrez quelques profondeurs au large de votre rive et voyez le quai qui y tient : ses pattes, son poids, son prix.',
    note: 'Le lac, l’atelier et les prix sont inventés.',
    language: 'Langue',
    lake: 'Au lac',
    lakeTitle: 'Leadline au lac',
    ready: 'Cette page fonctionne maintenant sans réseau.',
    update: 'Une version plus récente de cette page est là. Rien n’est perdu.',
    use: 'L’utiliser maintenant',
    elsewhere: 'Une version plus récente est ouverte dans une autre fenêtre. Rien n’est perdu.',
    load: 'La charger ici',
    editorTitle: 'Leadline : le catalogue de votre atelier',
    editorHead: 'Le catalogue de votre atelier',
    editorLead: 'Indiquez ce que vous fabriquez et ce que cela coûte ; le quai à côté en est construit.',
    editorNote: 'Au départ, c’est un atelier inventé.',
    howTo: 'Mode d’emploi (en anglais)',
  },
  es: {
    title: 'Leadline: un muelle en su propia orilla',
    head: 'Su muelle, en su propia agua',
    lead: 'Escriba algunas profundidades frente a su orilla y vea el muelle que se sostiene allí: sus patas, su peso, su precio.',
    note: 'El lago, el taller y los precios son inventados.',
    language: 'Idioma',
    lake: 'En el lago',
    lakeTitle: 'Leadline en el lago',
    ready: 'Esta página ya funciona sin señal.',
    update: 'Hay una versión más reciente de esta página. No se pierde nada.',
    use: 'Usarla ahora',
    elsewhere: 'En otra ventana ya se usa una versión más reciente. No se pierde nada.',
    load: 'Cargarla aquí',
    editorTitle: 'Leadline: el catálogo de su taller',
    editorHead: 'El catálogo de su taller',
    editorLead: 'Diga qué fabrica y qué cuesta; el muelle de al lado se construye con ello.',
    editorNote: 'Empieza con un taller inventado.',
    howTo: 'Cómo se hace (en inglés)',
  },
}

const kept = () => {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}
const keep = (lang) => {
  try {
    localStorage.setItem(KEY, lang)
  } catch {
    // No place to keep it: the next visit begins as the browser is set.
  }
}

/** @type {HTMLSelectElement | null} Only where the language is chosen. */
const choice = document.querySelector('#language')

/** Both speak and measure alike where one stands in the other. */
const ours = document.querySelectorAll('leadline-dock, leadline-catalog-editor')

function speak(lang) {
  const texts = TEXTS[lang]
  document.documentElement.lang = lang
  for (const each of document.querySelectorAll('[data-text]')) each.textContent = texts[each.dataset.text]
  choice?.setAttribute('aria-label', texts.language)
  if (choice) choice.value = lang
  for (const each of ours) each.setAttribute('lang', lang)
}

/** Where docks are sold by the foot. */
const FEET = ['US', 'CA', 'LR', 'MM']

/** A language without a region stands for that of most who speak it; what is no language for where this was written. */
function regionOf(tag) {
  try {
    return new Intl.Locale(tag).maximize().region
  } catch {
    return 'US'
  }
}

if (!FEET.includes(regionOf(navigator.language)))
  for (const each of ours) each.setAttribute('units', 'metric')

const wanted = [kept(), ...navigator.languages].map((tag) => (tag ?? '').split('-')[0])
const first = wanted.find((lang) => Object.hasOwn(TEXTS, lang)) ?? 'en'
if (first !== 'en') speak(first)
choice?.addEventListener('change', () => {
  keep(choice.value)
  speak(choice.value)
})
