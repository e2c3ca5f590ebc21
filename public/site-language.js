/** In which language the demo site speaks: as chosen here last, else as the browser is set. And what its pages say of working without a signal. */
const KEY = 'leadline-demo-language'

const OFFLINE = {
  en: {
    ready: ['This page now works with no signal.'],
    update: ['A newer version of this page is here. What you entered is kept.', 'Use it now'],
    elsewhere: ['A newer version is in use in another window. What you entered is kept.', 'Load it here'],
  },
  de: {
    ready: ['Diese Seite geht jetzt auch ohne Netz.'],
    update: ['Eine neuere Fassung dieser Seite ist da. Was eingetragen ist, bleibt.', 'Jetzt nehmen'],
    elsewhere: [
      'In einem anderen Fenster läuft eine neuere Fassung. Was eingetragen ist, bleibt.',
      'Hier laden',
    ],
  },
  fr: {
    ready: ['Cette page marche maintenant sans réseau.'],
    update: ['Une version plus récente de cette page est là. Ce que vous avez noté reste.', 'La prendre'],
    elsewhere: [
      'Une version plus récente sert dans une autre fenêtre. Ce que vous avez noté reste.',
      'La charger ici',
    ],
  },
  es: {
    ready: ['Esta página ya funciona sin conexión.'],
    update: ['Hay una versión más nueva de esta página. Lo que anotó se conserva.', 'Usarla ya'],
    elsewhere: ['Otra ventana usa una versión más nueva. Lo que anotó se conserva.', 'Cargarla aquí'],
  },
}

function kept() {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}

export function keep(lang) {
  try {
    localStorage.setItem(KEY, lang)
  } catch {
    // No place to keep it: the next visit begins as the browser is set.
  }
}

export function chosen() {
  const wanted = [kept(), ...navigator.languages].map((tag) => (tag ?? '').split('-')[0])
  return wanted.find((lang) => Object.hasOwn(OFFLINE, lang)) ?? 'en'
}

/** The page, the element in it, and what is said beside that. */
export function speak(lang) {
  document.documentElement.lang = lang
  document.querySelector('leadline-dock')?.setAttribute('lang', lang)
  for (const told of document.querySelectorAll('[data-offline]')) {
    const [text, use] = OFFLINE[lang][told.dataset.offline]
    told.firstChild.textContent = `${text} `
    if (use) told.querySelector('button').textContent = use
  }
}
