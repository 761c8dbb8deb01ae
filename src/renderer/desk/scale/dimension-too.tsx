import type { Reference, View } from '../../../core/job/model/types.ts'
import { askForDimension, type DimensionBegun } from '../../entering/new-dimension-asked.ts'
import { Button } from '../../parts/button.tsx'

interface DimensionTooProps {
  view: View
  reference: Reference
  writable: boolean
}

/** Makes a dimension of a figured size, with its figure and its own picks; of a rectangle either of its sides. */
export function DimensionToo({ view, reference, writable }: DimensionTooProps) {
  return (
    <div className="block-row">
      {waysOf(view, reference).map(({ words, begun }) => (
        <Button
          key={words}
          icon="plus"
          disabled={!writable}
          hint="With its figure as it is lettered, and scaled between its own picks."
          onPress={() => askForDimension(begun)}
        >
          {words}
        </Button>
      ))}
    </div>
  )
}

/** What a figured size begins a dimension with. */
export function waysOf(
  { id: view, sheet }: View,
  reference: Reference,
): { words: string; begun: DimensionBegun }[] {
  const between = (figure: string, one: string, other: string): DimensionBegun => ({
    figure,
    sheet,
    scaled: { view, measure: 'distance', marks: [one, other] },
  })
  switch (reference.kind) {
    case 'distance':
      return [{ words: 'A dimension too', begun: between(reference.size, ...reference.marks) }]
    case 'diameter':
      return [
        {
          words: 'A dimension too',
          begun: {
            figure: reference.size,
            sheet,
            scaled: { view, measure: 'diameter', marks: [...reference.marks] },
          },
        },
      ]
    case 'rectangle': {
      const [first, second, third] = reference.marks
      return [
        { words: 'Its width a dimension too', begun: between(reference.width, first, second) },
        { words: 'Its height a dimension too', begun: between(reference.height, second, third) },
      ]
    }
  }
}
