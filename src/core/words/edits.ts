/** Why an edit is refused, in sentences. */
import { article } from './article.ts'
import { capital } from './capital.ts'
import { quoted } from './quoted.ts'
import type { AnyReason, Say } from './reason.ts'

/** Of evidence there is no single one: it goes without an article. */
const withArticle = (kind: string, name: string): string => (kind === 'evidence' ? name : article(name))

export const EDIT_WORDS = {
  'edit.not-an-edit': () => 'This is not an edit: an edit is a JSON object that says what to "do".',
  'edit.does-nothing-known': (p: { where: string; does: string; meant: string | null }) => {
    const place = p.where === '' ? 'The edit' : `The edit: ${p.where}`
    const advice =
      p.meant === null
        ? 'the schema of an edit ("scantling schema edit") lists what it can be'
        : `did you mean ${quoted(p.meant)}?`
    return `${place}: unknown edit ${p.does}; ${advice}${p.meant === null ? '.' : ''}`
  },
  'edit.no-such-item': (p: { kind: string; id: string }, say: Say) =>
    `There is no ${say.quotedItem(p.kind, p.id)}: it may have been removed.`,
  'edit.item-there-already': (p: { kind: string; id: string; key: string }, say: Say) =>
    `There is ${withArticle(p.kind, say.quotedItem(p.kind, p.id))} already: give this one another ${p.key}.`,
  'edit.stands-for-two': (p: { as: string }) =>
    `The edit: ${quoted(p.as)} stands for two new things: give each its own.`,
  'edit.several-called': (p: { said: string; things: readonly string[] }) =>
    `Several things are called ${quoted(p.said)} (${p.things.join(', ')}): give the id of the one that is meant.`,
  'edit.index-beyond-end': (p: { kind: string; index: number; length: number }) =>
    `The ${p.kind} cannot be put at index ${p.index}: there are ${p.length}, so the index is at most that.`,
  'edit.dismissed-already': () => 'These strokes are dismissed already: nothing was changed.',
  'edit.not-dismissed': () => 'These strokes are not dismissed, so there is nothing to show again.',
  'edit.locked-field': (p: { what: string; field: string }) =>
    `${p.what}: a change cannot touch "${p.field}"; there is an edit of its own for that.`,
  'edit.set-and-cleared': (p: { what: string; field: string }) =>
    `${p.what}: "${p.field}" cannot be both set and cleared.`,
  'edit.not-withdrawn': (p: { id: string; dimension: string }, say: Say) =>
    `${say.quotedItem('evidence', p.id)} of ${p.dimension} is not withdrawn, so it cannot be reinstated.`,
  'edit.adopts-withdrawn': (p: { id: string; dimension: string; why: string }, say: Say) =>
    `${capital(say.quotedItem('evidence', p.id))} of ${p.dimension} is withdrawn (${quoted(p.why)}), so it cannot be adopted: reinstate it first, or adopt something else.`,
  'edit.withdrawn-already': (p: { id: string; dimension: string; why: string }, say: Say) =>
    `${capital(say.quotedItem('evidence', p.id))} of ${p.dimension} is withdrawn already (${quoted(p.why)}): reinstate it first to withdraw it for another reason.`,
  'edit.holds-evidence': (p: { dimension: string; evidence: readonly string[] }, say: Say) =>
    `dimension ${quoted(p.dimension)} holds evidence (${p.evidence.map(say.label).join(', ')}), and evidence is kept: withdraw it instead, saying why.`,
  'edit.no-such-dimension': (p: { name: string }) =>
    `There is no dimension ${quoted(p.name)}: it may have been renamed.`,
  'edit.name-taken': (p: { name: string }) =>
    `There is a dimension ${quoted(p.name)} already: give this one another name.`,
  'edit.name-means-something': (p: { name: string; dimension: string | null }) =>
    `${p.dimension === null ? 'A relation' : `A formula of dimension ${quoted(p.dimension)}`} means something else by ${quoted(p.name)} already: give another name.`,
  'edit.view-name-taken': (p: { name: string }) =>
    `There is a view ${quoted(p.name)} on this sheet already: give this one another name.`,
  'sheet.too-few-common': (p: { given: number; fewest: number }) =>
    `${p.given === 0 ? 'No place is' : p.given === 1 ? 'One place is' : `${p.given} places are`} picked on both pictures: pick ${p.fewest} at least.`,
  'sheet.common-on-a-line': () =>
    'The places that are picked on both pictures lie on one line, or nearly so: pick another well beside it.',
  'sheet.not-bare': (p: { title: string }) =>
    `Something is on the sheet ${quoted(p.title)} already, so its picture can't be that of another sheet: bring the better scan in anew.`,
  'edit.repeat-is-one-pixel': (p: { mark: string; kind: string }, say: Say) =>
    `${say.quotedItem('mark', p.mark)} is a ${p.kind}: give where it was picked again as one "pixel", and no "pixels".`,
  'edit.repeat-is-pixels': (p: { mark: string; kind: string }, say: Say) =>
    `${say.quotedItem('mark', p.mark)} is a ${p.kind}: give all of the pick as "pixels", and no "pixel".`,
  'edit.not-picked-again': (p: { mark: string; problem: AnyReason }, say: Say) =>
    `${say.quotedItem('mark', p.mark)} was not picked again: ${say(p.problem)}.`,
  'edit.other-corners': (p: { mark: string; picked: number; given: number }, say: Say) =>
    `${say.quotedItem('mark', p.mark)} was picked with ${p.picked} points, and this pick has ${p.given}: pick the same corners again.`,
  'edit.field-miswritten': (p: { what: string; field: string; meant: string }) =>
    `The edit: ${p.what} has no field ${quoted(p.field)}; did you mean ${quoted(p.meant)}?`,
  'edit.no-time': (p: { what: string; field: string; at: string }) =>
    `The edit: "${p.field}" of ${p.what} is ${p.at}, and must be an ISO 8601 date and time such as "1911-03-09T10:05:00Z".`,
} as const
