/** Is a quote's file what the engine makes of its own design and terms? Worked out again, and compared figure by figure. */
import { assessKit } from '../assess-kit.ts'
import type { Catalog } from '../catalog/index.ts'
import { deriveKit } from '../kit.ts'
import { type Issue, issue } from '../validation.ts'
import { askedAgain, type Quote, type QuoteLine, quote } from './quote.ts'
import type { QuoteFile } from './quote-file.ts'

/** What is told of first comes first: another catalog or engine explains all else. */
const FIGURES = {
  'fingerprint.catalog': ({ fingerprint }) => fingerprint.catalog,
  'fingerprint.engine': ({ fingerprint }) => fingerprint.engine,
  'fingerprint.design': ({ fingerprint }) => fingerprint.design,
  currency: ({ currency }) => currency,
  'discount.amount': ({ discount }) => discount.amount,
  'tax.amount': ({ tax }) => tax?.amount ?? null,
  'rounding.amount': ({ rounding }) => rounding?.amount ?? null,
  'priced.zone': ({ priced }) => priced.zone ?? null,
  total: ({ total }) => total,
  check: ({ check }) => check,
} as const satisfies Record<string, (of: Quote) => unknown>

/** None where all is as it is worked out from the file's design, what it was `priced` by, and this catalog. */
export function verifyQuote(file: QuoteFile, catalog: Catalog): Issue[] {
  const { priced, check } = file
  if (!priced || check === undefined)
    return [issue('check', 'missing', 'a quote with its check code; save it again with this version')]
  const said: Quote = { ...file, priced, check }
  const again = quote(assessKit(deriveKit(file.design, catalog)), file.design, catalog, askedAgain(said))
  const figures = Object.entries(FIGURES).flatMap(([path, of]): Issue[] => {
    const [found, made] = [of(said), of(again)]
    return found === made ? [] : [issue(path, JSON.stringify(found), JSON.stringify(made))]
  })
  return [...figures, ...otherLines(said.lines, again.lines)]
}

/** Those that are in one alone: in which order they stand is not money. */
function otherLines(found: Quote['lines'], made: Quote['lines']): Issue[] {
  const left = made.map(lineSaid)
  const more = found.flatMap((line, i): Issue[] => {
    const at = left.indexOf(lineSaid(line))
    if (at < 0) return [issue(`lines[${i}]`, lineSaid(line), 'no such line')]
    left.splice(at, 1)
    return []
  })
  return [...more, ...left.map((line) => issue('lines', 'missing', line))]
}

const lineSaid = ({ code, name, quantity, unitPrice, amount, taxed }: QuoteLine): string =>
  `${code ?? name}: ${quantity} × ${unitPrice} = ${amount}${taxed ? ', taxed' : ''}`
