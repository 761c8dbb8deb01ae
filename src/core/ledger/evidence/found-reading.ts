import { degrees, toRadians } from '../../geometry/angle-units.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import { angleInRadians } from '../../quantity/angle.ts'
import { graduationOf } from '../../quantity/graduation.ts'
import { parseAngle } from '../../quantity/parse/parse-angle.ts'
import { parseArea } from '../../quantity/parse/parse-area.ts'
import { parseCount } from '../../quantity/parse/parse-count.ts'
import { parseLength } from '../../quantity/parse/parse-length.ts'
import type { QuantityKind } from '../../quantity/quantity-kind.ts'

export interface Reading {
  value: number
  graduation: number
}

/**
 * Reads what was measured on the original, mm, radians, mm² or a count.
 * @throws NotationError
 */
export function readReading(text: string, kind: QuantityKind, conventions: Conventions): Reading {
  switch (kind) {
    case 'length': {
      const length = parseLength(text, { ...lengthContext(conventions), signed: true })
      // Read off a rule in halves, and written reduced.
      return { value: Number(length.mm), graduation: graduationOf(length, null) }
    }
    case 'angle': {
      const angle = parseAngle(text, { signed: true })
      return { value: angleInRadians(angle), graduation: toRadians(degrees(Number(angle.graduation))) }
    }
    case 'area': {
      const { mm2, graduation } = parseArea(text)
      return { value: Number(mm2), graduation: Number(graduation) }
    }
    case 'count':
      return { value: parseCount(text), graduation: 0 }
  }
}
