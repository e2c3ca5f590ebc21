import { expect, it } from 'vitest'
import { ownScript } from '../../src/platform/trusted-url.ts'

const HERE = new URL('../../src/platform/', import.meta.url).href

it('lets through what lies beside it, and nothing else', () => {
  expect(ownScript(`${HERE}worker.js`)).toBe(`${HERE}worker.js`)
  expect(ownScript('worker.js')).toBe(`${HERE}worker.js`)
  for (const url of [
    'https://elsewhere.example/worker.js',
    '//elsewhere.example/worker.js',
    'data:text/javascript,1',
    'blob:https://elsewhere.example/1',
    'javascript:1',
    '../worker.js',
    './%2e%2e/worker.js',
    'worker.js?callback=go',
    'worker.js#x',
  ])
    expect(() => ownScript(url), url).toThrow(TypeError)
})
