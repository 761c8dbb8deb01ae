import { parseSync } from 'vite'

/** What the checks need to know of one source file. */
export interface Source {
  /** Every module it names: imports, re-exports, `import()`, `import('…')` types and `require`. */
  readonly imports: readonly string[]
  /** Dynamic imports whose target is not a plain text. */
  readonly blindImports: number
  /** Uses of the clock, of chance, of the process or of the console, as written: `Date.now`, `Math.random`. */
  readonly impure: readonly string[]
  /** Names of the types, interfaces, classes and enums that it declares and exports. */
  readonly exportedTypes: readonly string[]
}

interface Node {
  readonly type: string
  readonly [key: string]: unknown
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'

const text = (value: unknown): string | undefined =>
  isNode(value) && value.type === 'Literal' && typeof value['value'] === 'string' ? value['value'] : undefined

const name = (value: unknown): string | undefined =>
  isNode(value) && value.type === 'Identifier' && typeof value['name'] === 'string'
    ? value['name']
    : undefined

/** Objects that tie a result to a machine or a moment, whatever is asked of them. */
const TIED_OBJECTS = new Set([
  'Date',
  'process',
  'console',
  'performance',
  'crypto',
  'globalThis',
  'window',
  'document',
])
const TIED_CALLS = new Set(['Date', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'fetch'])

function impureUse(node: Node): string | undefined {
  if (node.type === 'MemberExpression') {
    const object = name(node['object'])
    const property = name(node['property']) ?? text(node['property']) ?? '?'
    if (object === 'Math' && property === 'random') return 'Math.random'
    return object !== undefined && TIED_OBJECTS.has(object) ? `${object}.${property}` : undefined
  }
  if (node.type === 'NewExpression' && name(node['callee']) === 'Date') return 'new Date'
  const called = node.type === 'CallExpression' ? name(node['callee']) : undefined
  return called !== undefined && TIED_CALLS.has(called) ? `${called}()` : undefined
}

/** The module that a node names; 'blind' when it names one that only the run can tell. */
function namedModule(node: Node): string | { readonly blind: true } | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ExportNamedDeclaration':
    case 'TSImportType':
      return text(node['source'])
    case 'ImportExpression':
      return text(node['source']) ?? { blind: true }
    case 'TSExternalModuleReference':
      return text(node['expression'])
    case 'CallExpression': {
      const [first] = Array.isArray(node['arguments']) ? node['arguments'] : []
      return name(node['callee']) === 'require' ? (text(first) ?? { blind: true }) : undefined
    }
    default:
      return undefined
  }
}

const TYPE_DECLARATIONS = new Set([
  'TSTypeAliasDeclaration',
  'TSInterfaceDeclaration',
  'TSEnumDeclaration',
  'ClassDeclaration',
])

/** The name of the type that a statement declares and exports; undefined for any other statement. */
function exportedType(node: Node): string | undefined {
  const declaration = node.type === 'ExportNamedDeclaration' ? node['declaration'] : undefined
  return isNode(declaration) && TYPE_DECLARATIONS.has(declaration.type) ? name(declaration['id']) : undefined
}

/**
 * Reads one TypeScript file by its grammar, so that words in comments and texts do not count.
 *
 * @throws Error when the file has a syntax error: a file that cannot be read must not pass as one without imports
 */
export function readSource(path: string, code: string): Source {
  const { program, errors } = parseSync(path, code)
  const [problem] = errors
  if (problem) throw new Error(`${path} cannot be parsed: ${problem.message}`)
  const imports: string[] = []
  const impure: string[] = []
  const exportedTypes: string[] = []
  let blindImports = 0
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) {
      for (const item of value) visit(item)
      return
    }
    if (!isNode(value)) return
    const module = namedModule(value)
    if (typeof module === 'string') imports.push(module)
    else if (module) blindImports += 1
    const use = impureUse(value)
    if (use !== undefined) impure.push(use)
    const type = exportedType(value)
    if (type !== undefined) exportedTypes.push(type)
    for (const child of Object.values(value)) visit(child)
  }
  visit(program)
  return { imports, blindImports, impure, exportedTypes }
}
