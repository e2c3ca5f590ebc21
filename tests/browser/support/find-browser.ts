/**
 * Which browser the tests run in: the one that CHROMIUM names, else one that is installed, else the one that a package brings along
 * (Linux, x64). Says which, or what to install. And where there is one, which Firefox some of them run in.
 */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { delimiter, dirname, join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import { chromium } from 'playwright-core'

export interface FoundBrowser {
  readonly path: string
  /** Where it came from, in words. */
  readonly from: string
  readonly env?: Readonly<Record<string, string>>
}

const INSTALLED = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

const HELP =
  'No browser found. Install Chromium or Chrome, or set CHROMIUM to the path of one. On Linux (x64) `npm ci` brings one along.'

export async function findBrowser(): Promise<FoundBrowser> {
  const named = process.env.CHROMIUM
  if (named === 'bundled') return bundled()
  if (named) {
    if (!existsSync(named)) throw new Error(`CHROMIUM names ${named}, which is not there`)
    return { path: named, from: 'named by CHROMIUM' }
  }
  const installed = INSTALLED.find((path) => existsSync(path))
  if (installed) return { path: installed, from: 'installed here' }
  const own = chromium.executablePath()
  if (own && existsSync(own)) return { path: own, from: "Playwright's own" }
  return bundled()
}

/** Firefox: the one that FIREFOX names, else one on the path; null where there is none. */
export function findFirefox(): FoundBrowser | null {
  const named = process.env.FIREFOX
  if (named) {
    if (!existsSync(named)) throw new Error(`FIREFOX names ${named}, which is not there`)
    return { path: named, from: 'named by FIREFOX' }
  }
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean)
  const installed = ['firefox-esr', 'firefox']
    .flatMap((name) => folders.map((folder) => join(folder, name)))
    .find((path) => existsSync(path))
  return installed === undefined ? null : { path: installed, from: 'installed here' }
}

/** The browser of the package @sparticuz/chromium, with the system libraries that a bare machine lacks. */
async function bundled(): Promise<FoundBrowser> {
  if (process.platform !== 'linux' || process.arch !== 'x64') throw new Error(HELP)
  try {
    const { default: packed } = await import('@sparticuz/chromium')
    const path = await packed.executablePath()
    const bin = join(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium')), '../../bin')
    return { path, from: 'brought along by @sparticuz/chromium', env: { LD_LIBRARY_PATH: libraries(bin) } }
  } catch (error) {
    throw new Error(`${HELP} (${error instanceof Error ? error.message : error})`)
  }
}

/** Unpacks the libraries beside the browser, once. */
function libraries(bin: string): string {
  const root = join(tmpdir(), 'leadline-chromium-libraries')
  const lib = join(root, 'lib')
  if (!existsSync(lib)) {
    mkdirSync(root, { recursive: true })
    const archive = brotliDecompressSync(readFileSync(join(bin, 'al2023.tar.br')))
    execFileSync('tar', ['-x', '-C', root], { input: archive })
  }
  return [lib, process.env.LD_LIBRARY_PATH].filter(Boolean).join(':')
}
