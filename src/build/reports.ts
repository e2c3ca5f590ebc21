/** Where test runs leave their reports. */
export const REPORTS = {
  all: 'node_modules/.cache/leadline/tests.json',
  browser: 'node_modules/.cache/leadline/browser.json',
} as const
