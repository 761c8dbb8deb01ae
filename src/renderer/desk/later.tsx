import './later.css'
import { useBench } from '../bench/bench-store.ts'
import { Section } from '../parts/section.tsx'

const WORDS = {
  read: {
    will: [
      'Find the figures that are printed on a sheet, and read them.',
      'Show what a figure says or could say, with the piece of the scan beside it.',
      'Put each one to the dimension it belongs to, as printed evidence.',
    ],
    meanwhile: 'A printed figure is added on the card of its dimension: choose the row in the table.',
    command: undefined,
  },
  prove: {
    will: [
      'Check that the printed figures add up, by relations such as overall = neck + barrel + rim.',
      'Compare the drawing with the surviving original, and one person’s picks with another’s.',
      'List what does not agree, and what settles it.',
    ],
    meanwhile:
      'The table says already which dimensions agree and which are disputed. The command line ends with an error when anything is disputed or does not close:',
    command: 'scantling check',
  },
  'hand-over': {
    will: [
      'Issue the agreed table, dated and signed, for the shop.',
      'Give it as a spreadsheet, a printed sheet with its evidence, and full-size templates.',
      'Keep every issue, with what changed since the one before.',
    ],
    meanwhile: 'The command line gives the same table as the one below, ready for a spreadsheet:',
    command: 'scantling table',
  },
} as const

/** A station that is not built yet: what will be there, and what can be used meanwhile. */
export function Later({ station }: { station: keyof typeof WORDS }) {
  const place = useBench((bench) => bench.opened?.place ?? 'FOLDER')
  const { will, meanwhile, command } = WORDS[station]
  const folder = asArgument(place)
  return (
    <>
      <Section title="What will be here">
        <ul className="block-words">
          {will.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Section>
      <Section title="Meanwhile">
        <p>{meanwhile}</p>
        {command !== undefined && (
          <code className="later-command">
            {command} {folder}{' '}
            {command === 'scantling table' && <span className="later-option">--format csv</span>}
          </code>
        )}
      </Section>
    </>
  )
}

/** A folder as a shell takes it; a tilde within the quotes would mean nothing. */
function asArgument(place: string): string {
  const [, home = '', rest = place] = /^(~\/)?(.*)$/s.exec(place) ?? []
  return /[\s"'$&;()]/.test(rest) ? `${home}"${rest}"` : place
}
