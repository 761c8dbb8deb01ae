import './basis-sample.css'

/**
 * A sample of the line that a basis is drawn with on the sheet: printed full, scaled dashed, found double, derived
 * dotted, a mean full over dashed.
 */
export function BasisSample({ basis }: { basis: string | null }) {
  return (
    <svg className="basis-sample" viewBox="0 0 26 10" aria-hidden="true" focusable="false">
      {linesOf(basis)}
    </svg>
  )
}

function linesOf(basis: string | null) {
  switch (basis) {
    case 'printed':
      return <path d="M0 5H26" />
    case 'scaled':
      return <path d="M0 5H26" strokeDasharray="6 4" />
    case 'found':
      return <path d="M0 3.2H26M0 6.8H26" />
    case 'derived':
      return <path d="M1 5H26" strokeDasharray="0.1 4" strokeLinecap="round" strokeWidth="2.2" />
    case 'mean':
      return (
        <>
          <path d="M0 3.2H26" />
          <path d="M0 6.8H26" strokeDasharray="6 4" />
        </>
      )
    default:
      return null
  }
}
