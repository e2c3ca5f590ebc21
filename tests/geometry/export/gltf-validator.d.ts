/** The part that is used of the Khronos glTF Validator, which comes without types. */
declare module 'gltf-validator' {
  export function validateBytes(
    data: Uint8Array,
    options?: { readonly maxIssues?: number },
  ): Promise<{
    readonly issues: {
      readonly numErrors: number
      readonly numWarnings: number
      readonly numInfos: number
      readonly numHints: number
      readonly messages: readonly { readonly code: string; readonly message: string }[]
    }
  }>
}
