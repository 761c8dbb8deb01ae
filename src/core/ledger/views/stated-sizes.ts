import {
  diameterReference,
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../calibration/reference.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import type { Reference } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { finestInUse, fractionOf, graduationOf } from '../../quantity/graduation.ts'
import type { Length } from '../../quantity/length.ts'
import { parseKnownSize } from '../../quantity/parse/parse-known-size.ts'
import { parseLength } from '../../quantity/parse/parse-length.ts'
import { exact, measured, type Uncertain } from '../../uncertainty/uncertain.ts'
import { calledByFigure } from './name-known-sizes.ts'

/** What figured sizes are read with. */
interface SizeContext {
  conventions: Conventions
  featureOf(id: string): Feature
}

/** Reads the figures of figured sizes. */
interface FigureReader {
  size(text: string): Uncertain
  /** mm */
  graduation(text: string): number
}

/**
 * The figured sizes of a view as the calibration takes them.
 * @throws GeometryError when a mark determines no feature
 */
export function statedSizes(
  references: readonly Reference[],
  { conventions, featureOf }: SizeContext,
): StatedSize[] {
  const { unit } = conventions
  const context = lengthContext(conventions)
  const finest = finestInUse(
    references.flatMap((one) =>
      figuresOf(one).flatMap((text) => fractionOf(parseKnownSize(text, one.kind, context))),
    ),
  )
  return references.flatMap((reference) => {
    const label = `size stated for the figured size ${calledByFigure(reference, references)}`
    const read = (text: string): Length => parseKnownSize(text, reference.kind, context)
    const u = reference.u === undefined ? 0 : Number(parseLength(reference.u, { unit }).mm)
    return statedSizesOf(reference, featureOf, {
      size: (text) => measured(Number(read(text).mm), u, label),
      graduation: (text) => graduationOf(read(text), finest),
    })
  })
}

function statedSizesOf(
  reference: Reference,
  featureOf: SizeContext['featureOf'],
  { size, graduation }: FigureReader,
): StatedSize[] {
  const { id } = reference
  switch (reference.kind) {
    case 'distance': {
      const [a, b] = reference.marks
      const text = reference.size
      return distanceReference(id, featureOf(a), featureOf(b), size(text), graduation(text))
    }
    case 'diameter': {
      const [circle] = reference.marks
      return diameterReference(id, featureOf(circle), size(reference.size), graduation(reference.size))
    }
    case 'rectangle': {
      const [a, b, c, d] = reference.marks
      const { width, height } = reference
      return rectangleReference(
        id,
        [featureOf(a), featureOf(b), featureOf(c), featureOf(d)],
        size(width),
        size(height),
        exact(0),
        [graduation(width), graduation(height)],
      )
    }
  }
}

const figuresOf = (reference: Reference): string[] =>
  reference.kind === 'rectangle' ? [reference.width, reference.height] : [reference.size]
