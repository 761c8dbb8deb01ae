/** An object of a JSON document that is read as it comes. */
export type Loose = Readonly<Record<string, unknown>>

export const isLoose = (value: unknown): value is Loose =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** JSON-LD writes one value alone and several as a list: always a list. */
export const listOf = (value: unknown): readonly unknown[] =>
  value === undefined || value === null ? [] : Array.isArray(value) ? value : [value]

/** Whether something is of a class; the class may be written with the prefix of its vocabulary. */
export const isOf = (thing: Loose, name: string): boolean =>
  listOf(thing['type'] ?? thing['@type']).some((type) => type === name || type === `oa:${name}`)

/** The first text of one or several; undefined when there is none. */
export const textOf = (value: unknown): string | undefined =>
  listOf(value).find((one): one is string => typeof one === 'string')

/** The IRI of a resource that is given as its IRI or as an object that has one. */
export const iriOf = (value: unknown): string | undefined =>
  isLoose(value) ? textOf(value['id'] ?? value['@id']) : textOf(value)
