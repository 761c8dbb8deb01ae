import { type Pixel, pixel } from '../../../geometry/frames.ts'

/** What the fragment of an IRI says of a picture: its page, and a region in pixels or in hundredths of the page. */
export interface Fragment {
  page?: number
  region?: { unit: 'pixel' | 'percent'; x: number; y: number; width: number; height: number }
  /** What it says besides. */
  others: string[]
}

const REGION = /^xywh=(?:(pixel|percent):)?(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/

/**
 * Reads the fragment of an IRI without its `#`: `page=2`, `xywh=10,20,300,400`, `xywh=percent:5,5,20,10`, or several
 * joined by `&`.
 * Source: Media Fragments URI 1.0 (W3C Recommendation 25 September 2012), section 4.2.2; RFC 3778 section 3 (page).
 */
export function readFragment(text: string): Fragment {
  const fragment: Fragment = { others: [] }
  for (const part of text.split('&').filter((one) => one !== '')) {
    const page = /^page=(\d{1,9})$/.exec(part)
    const region = REGION.exec(part)
    if (page !== null && Number(page[1]) >= 1) fragment.page = Number(page[1])
    else if (region !== null) {
      const [x = 0, y = 0, width = 0, height = 0] = region.slice(2).map(Number)
      fragment.region = { unit: region[1] === 'percent' ? 'percent' : 'pixel', x, y, width, height }
    } else fragment.others.push(part)
  }
  return fragment
}

/** The corners of a region of a fragment, in pixels of its page. */
export function regionOutline(
  { unit, x, y, width, height }: NonNullable<Fragment['region']>,
  page: { width: number; height: number },
): Pixel[] {
  const [across, down] = unit === 'pixel' ? [1, 1] : [page.width / 100, page.height / 100]
  const [left, top, right, bottom] = [x * across, y * down, (x + width) * across, (y + height) * down]
  return [pixel(left, top), pixel(right, top), pixel(right, bottom), pixel(left, bottom)]
}
