/** Vite's `import.meta.glob`: files by their paths, each a chunk that is loaded when it is called for. */
interface ImportMeta {
  glob<T>(
    pattern: string,
    options: { readonly import: 'default' },
  ): Readonly<Record<string, () => Promise<T>>>
}
