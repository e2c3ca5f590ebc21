/** Where the two test runs leave their reports. */
export const REPORTS = {
  unit: 'node_modules/.cache/leadline/unit.json',
  browser: 'node_modules/.cache/leadline/browser.json',
} as const
