/** Engine version: part of every fingerprint. The same as package.json's; a test holds that. */
export const ENGINE_VERSION = '0.5.0'
