/** The script of `frame.html`: its planner and the page around it, if that page's origin stands in the list of `frame.html`. */
import type { LeadlineDock } from '../element/leadline-dock.ts'
import { bridge } from './bridge.ts'
import { originsIn } from './messages.ts'

const element = document.querySelector<LeadlineDock>('leadline-dock')
const list = document.querySelector<HTMLMetaElement>('meta[name=leadline-origins]')?.content ?? ''
if (element && parent !== window) bridge(element, parent, originsIn(list))
