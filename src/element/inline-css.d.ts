/** A style sheet as text, minified by the build, to be adopted by a shadow root. */
declare module '*.css?inline' {
  const css: string
  export default css
}
