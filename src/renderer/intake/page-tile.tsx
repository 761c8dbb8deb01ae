import { useState } from 'react'
import { Checkbox } from 'react-aria-components'
import { pageThumbnailAddress } from '../../contract/picture-addresses.ts'
import type { PageLook } from '../../contract/scan-look.ts'
import { theHost } from '../bench/the-host.ts'
import { Icon } from '../parts/icon.tsx'
import { pageLines } from './page-words.ts'

interface PageTileProps {
  upload: string
  page: PageLook
  chosen: boolean
  /** Whether the scan may be gone from the host at any moment: then no picture of it is asked for. */
  leaving: boolean
}

/** A picture that is still on its way is given up with its element. */
const givenUpAtEnd = (image: HTMLImageElement) => () => image.removeAttribute('src')

/** One page: its picture, whether it is chosen, and what is known of it. */
export function PageTile({ upload, page, chosen, leaving }: PageTileProps) {
  const [failed, setFailed] = useState(false)
  const [came, setCame] = useState(false)
  const shown = !failed && (came || !leaving)
  return (
    <>
      <span className="page-tile-picture">
        {shown && page.fault === undefined ? (
          <img
            ref={givenUpAtEnd}
            src={theHost().pictureUrl(pageThumbnailAddress({ upload, page: page.page }))}
            alt=""
            loading="lazy"
            draggable={false}
            onLoad={() => setCame(true)}
            onError={() => setFailed(true)}
          />
        ) : (
          <Icon name={page.fault === undefined ? 'sheet' : 'caution'} large />
        )}
      </span>
      <span className="page-tile-head">
        {page.fault === undefined && (
          <Checkbox slot="selection" className="page-tile-box" data-chosen={chosen || undefined}>
            <Icon name="check" />
          </Checkbox>
        )}
        Page {page.page}
      </span>
      {page.fault === undefined ? (
        pageLines(page).map((line) => (
          <span className="page-tile-line" key={line}>
            {line}
          </span>
        ))
      ) : (
        <span className="page-tile-fault">{page.fault}</span>
      )}
    </>
  )
}
