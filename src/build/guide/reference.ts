/**
 * The reference of what the package's modules export: signature and docstring of each name, read from the sources. Run by
 * `npm run build:reference`; a test holds `public/guide/reference.md` to what they say now, and that each export says something.
 */
import { existsSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import * as analyzer from '@custom-elements-manifest/analyzer'

/** The compiler of this project has no interface for programs; this one comes with what makes the custom elements' manifest. */
type Compiler = analyzer.InitializeParams['ts']
const { ts } = analyzer as unknown as { readonly ts: Compiler }
type Program = ReturnType<Compiler['createProgram']>
type Checker = ReturnType<Program['getTypeChecker']>
type Source = NonNullable<ReturnType<Program['getSourceFile']>>
type Exported = NonNullable<ReturnType<Checker['getSymbolAtLocation']>>
type Node = Parameters<Compiler['isClassDeclaration']>[0]
type Options = ReturnType<Program['getCompilerOptions']>
/** Of what can be called, as much as is read. */
interface Callable {
  readonly typeParameters?: readonly Node[] | undefined
  readonly parameters: readonly Node[] & { readonly pos: number; readonly end: number }
  readonly type?: Node | undefined
}

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
export const REFERENCE = join(ROOT, 'public/guide/reference.md')

/** By what a host imports, as package.json has it. */
export const ENTRIES = {
  leadline: 'src/element/index.ts',
  'leadline/react': 'src/element/react.ts',
  'leadline/rules': 'rules/index.ts',
  'leadline/record': 'rules/record/index.ts',
  'leadline/geometry': 'geometry/index.ts',
} as const

/** Where the sources are that belong to a subject; the first that fits. */
const SUBJECTS: readonly (readonly [string, RegExp])[] = [
  ['The element', /^src\/element\//],
  [
    'From a design to its dock',
    /^rules\/(?:derive|kit|publish-kit|assess-kit|with-structure|project|catalog-index|fingerprint|version|numbers)\.ts$/,
  ],
  ['What a dock is', /^rules\/(?:dock|part-kinds)\.ts$|^rules\/parts\//],
  [
    'Designs, and what comes from outside',
    /^rules\/(?:design\/|validation\.ts|issue\.ts|request\.ts|plain-data\.ts)/,
  ],
  ['Catalogs', /^rules\/catalog\//],
  ['The ground', /^rules\/site\//],
  ['Checks and structure', /^rules\/(?:checks|structure|limits)\//],
  ['Lists', /^rules\/(?:papers|existing)\//],
  ['Words and figures', /^rules\/words\//],
  ['The season record', /^rules\/record\//],
  ['Shapes', /^geometry\/|^rules\/vec\.ts$/],
]

export interface Told {
  readonly name: string
  /** Of the sources. */
  readonly file: string
  readonly signature: string
  /** Empty: nobody has written any. */
  readonly doc: string
}

/** Sources of the engine and the element's own file: what they import besides is not followed, and not needed to say what is exported. */
const FOLLOWED = /^(?:rules|geometry)\/.*\.ts$|^src\/element\/(?:index|react|leadline-dock|page-types)\.ts$/

function programOf(): Program {
  const options: Options = {
    target: ts.ScriptTarget.ESNext,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    noLib: true,
    types: [],
  }
  const host = ts.createCompilerHost(options)
  host.resolveModuleNameLiterals = (names, from) =>
    names.map(({ text }) => {
      const resolvedFileName = resolve(dirname(from), text)
      const followed = text.startsWith('.') && FOLLOWED.test(relative(ROOT, resolvedFileName))
      return {
        resolvedModule:
          followed && existsSync(resolvedFileName)
            ? { resolvedFileName, extension: ts.Extension.Ts, isExternalLibraryImport: false }
            : undefined,
      }
    })
  return ts.createProgram(
    Object.values(ENTRIES).map((file) => join(ROOT, file)),
    options,
    host,
  )
}

const oneLine = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/([([]) | (?=[)\]])/g, '$1')
    .replace(/,(?=[)\]])/g, '')

/** Without what stands before it, and with no code in it. */
function signatureOf(name: string, node: Node): string {
  const file = node.getSourceFile()
  const head = (from: Callable): string => {
    const begin = from.typeParameters?.[0]?.getFullStart() ?? from.parameters.pos
    const end = from.type?.end ?? file.text.indexOf(')', from.parameters.end) + 1
    const typed = from.typeParameters ? '<' : '('
    return oneLine(`${typed}${file.text.slice(begin, end)}`)
  }
  if (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node)) return `${name}${head(node)}`
  if (ts.isVariableDeclaration(node)) {
    const value = node.initializer
    if (value && ts.isArrowFunction(value)) return `${name}${head(value)}`
    const type = node.type ?? (value && ts.isAsExpression(value) ? value.type : undefined)
    return type ? `${name}: ${oneLine(type.getText())}` : `const ${name}`
  }
  if (ts.isGetAccessorDeclaration(node)) {
    const { parent } = node
    const set =
      ts.isClassDeclaration(parent) &&
      parent.members.some((one) => ts.isSetAccessorDeclaration(one) && one.name.getText() === name)
    return `${set ? '' : 'readonly '}${name}: ${node.type?.getText() ?? 'unknown'}`
  }
  if (ts.isPropertyDeclaration(node)) return oneLine(node.getText().replace(/\s*=[^>].*$/s, ''))
  if (ts.isClassDeclaration(node)) {
    const members = node.members.flatMap((member) => {
      const hidden =
        ts.getCombinedModifierFlags(member) & (ts.ModifierFlags.Private | ts.ModifierFlags.Static)
      const of = member.name
      const own =
        ts.isMethodDeclaration(member) ||
        ts.isGetAccessorDeclaration(member) ||
        ts.isPropertyDeclaration(member)
      if (hidden || !own || !of || ts.isPrivateIdentifier(of) || /Callback$/.test(of.getText())) return []
      const docs = file.text.slice(member.getFullStart(), member.getStart()).trim()
      return [`${docs === '' ? '' : `  ${docs}\n`}  ${signatureOf(of.getText(), member)}`]
    })
    // `Base` is what stands for it where there is no document.
    const above = (node.heritageClauses ?? [])
      .map((clause) => ` ${clause.getText().replace(/\bBase\b/, 'HTMLElement')}`)
      .join('')
    return `class ${name}${above} {\n${members.join('\n')}\n}`
  }
  return node.getText().replace(/^export (?:declare )?/, '')
}

/** The text and its tags, as lines of Markdown. */
function docOf(symbol: Exported, checker: Checker): string {
  const text = ts.displayPartsToString(symbol.getDocumentationComment(checker))
  // Those of an element are its attributes, slots and events: the guide has them in tables.
  const tags = symbol.getJsDocTags(checker).flatMap(({ name, text: told }) => {
    const said = oneLine(ts.displayPartsToString(told)).trim()
    if (name === 'param') return [`- \`${said.replace(/^(\S+) (?:- )?/, '$1`: ')}`]
    return name === 'throws' || name === 'returns' ? [`- ${name} ${said}`] : []
  })
  const paragraphs = text.split(/\n\s*\n/).map((one) => oneLine(one).trim())
  return [...paragraphs, ...(tags.length > 0 ? [tags.join('\n')] : [])].filter(Boolean).join('\n\n')
}

/** What a file says of itself, where it is exported whole. */
const headOf = (file: Source): string =>
  (/^\/\*\*([\s\S]*?)\*\//.exec(file.text)?.[1] ?? '')
    .replace(/^\s*\* ?/gm, '')
    .trim()
    .replace(/\s+/g, ' ')

/** What is called or read first, then types: as names begin, small or large. */
const inOrder = (a: Told, b: Told): number => {
  const [small, other] = [a, b].map(({ name }) => /^[a-z]/.test(name))
  return small === other ? (a.name < b.name ? -1 : 1) : small ? -1 : 1
}

/** All that each entry exports, by its name. */
export function exported(): Readonly<Record<keyof typeof ENTRIES, readonly Told[]>> {
  const program = programOf()
  const checker = program.getTypeChecker()
  const namesOf = (file: Source): readonly Exported[] =>
    checker.getExportsOfModule(checker.getSymbolAtLocation(file)!)
  const tell = (symbol: Exported): Told => {
    const real = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol
    const node = real.declarations?.[0]
    if (!node) throw new Error(`${symbol.name}: declared nowhere that is followed`)
    const file = relative(ROOT, node.getSourceFile().fileName)
    if (!ts.isSourceFile(node))
      return { name: symbol.name, file, signature: signatureOf(symbol.name, node), doc: docOf(real, checker) }
    const inside = namesOf(node).map((one) => `  ${tell(one).signature.replaceAll('\n', '\n  ')}`)
    return {
      name: symbol.name,
      file,
      signature: `${symbol.name}: {\n${inside.join('\n')}\n}`,
      doc: headOf(node),
    }
  }
  const seen = new Set<string>()
  const all = Object.entries(ENTRIES).map(([entry, path]) => {
    const file = program.getSourceFile(join(ROOT, path))
    if (!file) throw new Error(`${path}: not there`)
    const told = namesOf(file)
      .map(tell)
      .filter(({ name, file: of }) => !seen.has(`${of} ${name}`))
    for (const { name, file: of } of told) seen.add(`${of} ${name}`)
    return [entry, told.sort(inOrder)]
  })
  return Object.fromEntries(all)
}

export function referenceOf(all: ReturnType<typeof exported>): string {
  const lines = [
    '# Reference',
    '',
    'What can be imported, with its signature and what its source says of it. Made by `npm run build:reference`. How it goes together: [the engine as a library](library.md); attributes, events and slots of the',
    'element: [on your own page](embed.md); fields of files: [`schema/`](../schema/). All lengths are m, masses kg, prices minor units of the currency (cents).',
  ]
  for (const [entry, told] of Object.entries(all)) {
    lines.push('', `## \`${entry}\``)
    const subjects = new Map<string, Told[]>()
    for (const one of told) {
      const subject = SUBJECTS.find(([, path]) => path.test(one.file))?.[0]
      if (subject === undefined) throw new Error(`${one.name} of ${one.file}: of no subject in SUBJECTS`)
      subjects.set(subject, [...(subjects.get(subject) ?? []), one])
    }
    for (const [subject] of SUBJECTS) {
      const here = subjects.get(subject)
      if (!here) continue
      if (subjects.size > 1) lines.push('', `### ${subject}`)
      for (const { name, signature, doc } of here)
        lines.push(
          '',
          `${subjects.size > 1 ? '####' : '###'} ${name}`,
          '',
          doc,
          '',
          '```ts',
          signature,
          '```',
        )
    }
  }
  return `${lines.join('\n')}\n`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(REFERENCE, referenceOf(exported()))
