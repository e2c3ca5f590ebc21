/** Files that the build copies: their address. */
declare module '*.ttf?url' {
  const url: string
  export default url
}
