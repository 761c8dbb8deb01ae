import type { Glance } from '../../contract/jobs.ts'

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

/** How a job stands, in words: `2 sheets, 14 dimensions: 1 disputed, 3 with no value`. */
export function standingInWords({ sheets, dimensions, disputed, noValue, problem }: Glance): string {
  if (problem !== undefined) return problem
  const parts = [
    ...(disputed > 0 ? [`${disputed} disputed`] : []),
    ...(noValue > 0 ? [`${noValue} with no value`] : []),
  ]
  const all = `${counted(sheets, 'sheet', 'sheets')}, ${counted(dimensions, 'dimension', 'dimensions')}`
  return parts.length === 0 ? all : `${all}: ${parts.join(', ')}`
}
