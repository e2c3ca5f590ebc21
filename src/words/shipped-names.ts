/** Languages that come along beside English: `public/words/NAME.json`. */
export const SHIPPED_LANGUAGES = ['de', 'es', 'fr'] as const
