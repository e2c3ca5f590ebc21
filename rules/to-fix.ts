/**
 * What is to be fixed before building: all that must not be built so, and all that is more, or less, than it may be. The one exception are the
 * warnings about the soundings and about what was assumed in their place: they say that too little is known of the lake, which is measured or
 * said, not mended.
 */
import type { Finding } from './dock.ts'

const ofShore = (code: string): boolean => code.startsWith('soundings-') || code === 'site-assumed'

export const isToFix = ({ code, severity }: Pick<Finding, 'code' | 'severity'>): boolean =>
  severity === 'stop' || (severity === 'warn' && !ofShore(code))
