/**
 * Where the papers' fonts lie, as files of our own origin. Named in the page alone, which tells its worker: a file that page and worker
 * both name is put where neither finds it by webpack 5.
 */
import regular from '@expo-google-fonts/roboto/400Regular/Roboto_400Regular.ttf?url'
import bold from '@expo-google-fonts/roboto/700Bold/Roboto_700Bold.ttf?url'

export interface FontUrls {
  readonly regular: string
  readonly bold: string
}

export const FONT_URLS: FontUrls = { regular, bold }
