import './section.css'
import type { ReactNode } from 'react'
import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components'
import { Icon } from './icon.tsx'

interface SectionProps {
  title: string
  children: ReactNode
  /** Stands at the right of its head. */
  aside?: ReactNode
  /** Whether it folds, and whether it begins `shut` or `open`; left out: it always shows. */
  fold?: 'open' | 'shut'
  /** Called as it is unfolded and folded. */
  onFold?: (unfolded: boolean) => void
}

/** A part of the desk under a heading and a hairline. */
export function Section({ title, children, aside, fold, onFold }: SectionProps) {
  if (fold === undefined) {
    return (
      <section className="section" aria-label={title}>
        <div className="section-head">
          <h3 className="section-title">{title}</h3>
          {aside}
        </div>
        {children}
      </section>
    )
  }
  return (
    <Disclosure
      className="section"
      defaultExpanded={fold === 'open'}
      {...(onFold === undefined ? {} : { onExpandedChange: onFold })}
    >
      <div className="section-head">
        <Heading level={3} className="section-title">
          <Button slot="trigger" className="section-fold">
            <Icon name="right" />
            {title}
          </Button>
        </Heading>
        {aside}
      </div>
      <DisclosurePanel className="section-content">{children}</DisclosurePanel>
    </Disclosure>
  )
}
