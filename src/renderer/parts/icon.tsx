import './icon.css'
import { ICON_LINES, type IconName } from './icon-lines.ts'

/** A line drawing beside words; it says nothing by itself. */
export function Icon({ name, large = false }: { name: IconName; large?: boolean }) {
  return (
    <svg className="icon" data-large={large || undefined} viewBox="0 0 20 20" aria-hidden="true">
      {ICON_LINES[name].map((line) => (
        <path key={line} d={line} />
      ))}
    </svg>
  )
}
