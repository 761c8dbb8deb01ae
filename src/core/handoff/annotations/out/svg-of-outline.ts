import type { Pixel } from '../../../geometry/frames.ts'

/**
 * A region of a page as an SVG polygon, for an SvgSelector. The canvas is the page, one unit a pixel.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017), section 4.2.7.
 */
export function svgOfOutline(outline: readonly Pixel[], page: { width: number; height: number }): string {
  const points = outline.map(([x, y]) => `${x},${y}`).join(' ')
  const size = `width="${page.width}" height="${page.height}" viewBox="0 0 ${page.width} ${page.height}"`
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><polygon points="${points}"/></svg>`
}
