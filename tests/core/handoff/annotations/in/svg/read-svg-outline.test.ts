import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readSvgOutline } from '../../../../../../src/core/handoff/annotations/in/svg/read-svg-outline.ts'
import { inWords } from '../../../../../../src/core/words/core-words.ts'

const PAGE = { width: 4000, height: 3000 }

type Pair = readonly [number, number]

function outlineOf(inside: string, root = ''): readonly Pair[] {
  const region = readSvgOutline(`<svg ${root}>${inside}</svg>`, PAGE)
  if ('problem' in region) throw new Error(inWords(region.problem))
  return region.outline
}

function problemOf(text: string): string {
  const region = readSvgOutline(text, PAGE)
  return 'problem' in region ? region.problem.code : ''
}

function near(found: readonly Pair[], expected: readonly Pair[]): void {
  expect(found.length).toBe(expected.length)
  found.forEach(([x, y], k) => {
    expect(Math.hypot(x - (expected[k]?.[0] ?? 0), y - (expected[k]?.[1] ?? 0))).toBeLessThan(1e-9)
  })
}

const RECT = '<rect x="100" y="200" width="300" height="100"/>'
const CORNERS: Pair[] = [
  [100, 200],
  [400, 200],
  [400, 300],
  [100, 300],
]
const [COS, SIN] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)]

describe('A shape stands where its transforms place it', () => {
  it.each<[string, (x: number, y: number) => Pair]>([
    ['translate(10, -20)', (x, y) => [x + 10, y - 20]],
    ['translate(10)', (x, y) => [x + 10, y]],
    ['scale(2)', (x, y) => [2 * x, 2 * y]],
    ['scale(2,.5)', (x, y) => [2 * x, y / 2]],
    ['rotate(30)', (x, y) => [COS * x - SIN * y, SIN * x + COS * y]],
    ['rotate(90 100 200)', (x, y) => [100 - (y - 200), 200 + (x - 100)]],
    ['skewX(45)', (x, y) => [x + y, y]],
    ['skewY(-45)', (x, y) => [x, y - x]],
    ['matrix(1 2 3 4 5 6)', (x, y) => [x + 3 * y + 5, 2 * x + 4 * y + 6]],
    ['translate(10 20) scale(3)', (x, y) => [3 * x + 10, 3 * y + 20]],
    ['scale(3),translate(10,20)', (x, y) => [3 * (x + 10), 3 * (y + 20)]],
    ['', (x, y) => [x, y]],
  ])('by %j', (transform, place) => {
    const expected = CORNERS.map(([x, y]) => place(x, y))
    near(outlineOf(RECT.replace('<rect', `<rect transform="${transform}"`)), expected)
    near(outlineOf(`<g transform="${transform}">${RECT}</g>`), expected)
  })

  it('by those of every group around it, the innermost first', () => {
    const groups = `<g transform="translate(1000 0)"><g transform="scale(2)">${RECT}</g></g>`
    near(
      outlineOf(groups),
      CORNERS.map(([x, y]) => [1000 + 2 * x, 2 * y]),
    )
    near(outlineOf(`<g transform="scale(7)"/>${RECT}`), CORNERS)
  })

  it('before its canvas is laid over the page', () => {
    near(
      outlineOf(RECT.replace('<rect', '<rect transform="translate(10 20)"'), 'viewBox="100 200 1000 750"'),
      CORNERS.map(([x, y]) => [4 * (x - 90), 4 * (y - 180)]),
    )
  })

  it.each([
    '<rect transform="rotate3d(1,0,0,45)" width="1" height="1"/>',
    '<rect transform="rotate(10 20)" width="1" height="1"/>',
    '<rect transform="matrix(1 2 3)" width="1" height="1"/>',
    '<rect transform="translate(1e999)" width="1" height="1"/>',
    '<g transform="none of these"><rect width="1" height="1"/></g>',
    '<rect style="fill:none; transform: rotate(3deg)" width="1" height="1"/>',
    '<rect transform="scale(2)" transform-origin="5 5" width="1" height="1"/>',
  ])('but %s is not understood', (inside) => {
    expect(problemOf(`<svg>${inside}</svg>`)).toBe('annotation.unknown-transform')
  })

  it('nor a canvas within the canvas', () => {
    expect(problemOf(`<svg><svg x="10" width="50" height="50">${RECT}</svg></svg>`)).toBe(
      'annotation.inner-canvas',
    )
    near(outlineOf(`<svg>${RECT}</svg>`), CORNERS)
  })

  it('whatever two affine steps are put after one another', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true })
    const matrix = fc.tuple(number, number, number, number, number, number)
    fc.assert(
      fc.property(matrix, matrix, (outer, inner) => {
        const apply = ([a, b, c, d, e, f]: typeof outer, [x, y]: Pair): Pair => [
          a * x + c * y + e,
          b * x + d * y + f,
        ]
        const found = outlineOf(
          `<g transform="matrix(${outer})"><path transform="matrix(${inner})" d="M1 2 L-3 5"/></g>`,
        )
        for (const [k, point] of (
          [
            [1, 2],
            [-3, 5],
          ] as Pair[]
        ).entries()) {
          const [x, y] = apply(outer, apply(inner, point))
          expect(found[k]?.[0]).toBeCloseTo(x, 6)
          expect(found[k]?.[1]).toBeCloseTo(y, 6)
        }
      }),
    )
  })
})

/** The largest distance of the middles of the sides, and of the corners, from a curve that is given implicitly. */
function off(
  outline: readonly Pair[],
  distance: (x: number, y: number) => number,
): [corners: number, sides: number] {
  const corners = outline.map(([x, y]) => Math.abs(distance(x, y)))
  const sides = outline.slice(1).map(([x, y], k) => {
    const [px, py] = outline[k] ?? [x, y]
    return Math.abs(distance((x + px) / 2, (y + py) / 2))
  })
  return [Math.max(...corners), Math.max(...sides)]
}

describe('A curve is made straight within half a pixel of the page', () => {
  const parabola = (x: number, y: number): number => y - (2 * x * (1000 - x)) / 1000

  it.each([
    'M0 0 Q 500 1000 1000 0',
    'm0,0q500,1000,1000,0',
    'M0 0 C 333.3333333333333 666.6666666666666 666.6666666666666 666.6666666666666 1000 0',
  ])('%s is a parabola', (d) => {
    const outline = outlineOf(`<path d="${d}"/>`)
    const [corners, sides] = off(outline, parabola)
    expect(corners).toBeLessThan(1e-9)
    expect(sides).toBeLessThan(0.5)
    expect(outline.at(-1)).toEqual([1000, 0])
    expect(outline.length).toBeLessThan(60)
  })

  it('a cubic whose x goes evenly is y = x³', () => {
    const [corners, sides] = off(
      outlineOf('<path d="M0 0C400 0 800 0 1200 1200"/>'),
      (x, y) => y - 1200 * (x / 1200) ** 3,
    )
    expect(corners).toBeLessThan(1e-9)
    expect(sides).toBeLessThan(0.5)
  })

  it('a smooth curve goes on as the one before it ended', () => {
    const wave = (x: number, y: number): number => {
      const s = x <= 500 ? x : x - 500
      return y - (x <= 500 ? 1 : -1) * 2 * s * (1 - s / 500)
    }
    expect(off(outlineOf('<path d="M0 0 Q 250 500 500 0 T 1000 0"/>'), wave)[0]).toBeLessThan(1e-9)
    expect(off(outlineOf('<path d="M0 0 q 250 500 500 0 t 500 0"/>'), wave)[0]).toBeLessThan(1e-9)
    const third = 500 / 3
    const cubic = `M0 0 C ${third} ${2 * third} ${2 * third} ${2 * third} 500 0 S ${500 + 2 * third} ${-2 * third} 1000 0`
    expect(off(outlineOf(`<path d="${cubic}"/>`), wave)[0]).toBeLessThan(1e-9)
  })

  it.each([
    ['M 1100 500 A 300 300 0 0 1 500 500', Math.PI],
    ['M 1100 500 A 300 300 0 0 0 500 500', -Math.PI],
    ['M 1100 500 A 300 300 0 0 1 800 800', Math.PI / 2],
    ['M 1100 500 A 300 300 0 1 0 800 800', -1.5 * Math.PI],
    ['M 1100 500 a 300 300 0 01-300 300', Math.PI / 2],
    // Radii too small for their chord are enlarged until they reach (SVG 1.1, F.6.6).
    ['M 1100 500 A 10 10 0 0 1 500 500', Math.PI],
  ])('%s is an arc about (800, 500)', (d, sweep) => {
    const outline = outlineOf(`<path d="${d}"/>`)
    for (const [x, y] of outline) expect(Math.hypot(x - 800, y - 500)).toBeCloseTo(300, 8)
    const turned = outline.slice(1).reduce((sum, [x, y], k) => {
      const [px, py] = outline[k] ?? [x, y]
      const cross = (px - 800) * (y - 500) - (py - 500) * (x - 800)
      return sum + Math.asin(cross / 300 ** 2)
    }, 0)
    expect(turned).toBeCloseTo(sweep, 8)
    const [, sides] = off(outline, (x, y) => Math.hypot(x - 800, y - 500) - 300)
    expect(sides).toBeLessThan(0.5)
  })

  it('an arc of a turned ellipse lies on it, from one end of its long axis to the other', () => {
    const [dx, dy] = [400 * COS, 400 * SIN]
    const outline = outlineOf(
      `<path d="M ${1000 + dx} ${800 + dy} A 400 100 30 0 1 ${1000 - dx} ${800 - dy}"/>`,
    )
    for (const [x, y] of outline) {
      const [u, v] = [COS * (x - 1000) + SIN * (y - 800), COS * (y - 800) - SIN * (x - 1000)]
      expect(Math.hypot(u / 400, v / 100)).toBeCloseTo(1, 9)
      expect(v).toBeGreaterThan(-1e-6)
    }
    expect(outline.length).toBeGreaterThan(25)
  })

  it.each([
    ['<circle cx="2000" cy="1500" r="1400"/>', ''],
    ['<circle cx="20" cy="15" r="14"/>', 'viewBox="0 0 40 30"'],
    ['<g transform="scale(100)"><circle cx="20" cy="15" r="14"/></g>', ''],
  ])('so is a large circle, by more sides: %s on a canvas %j', (inside, root) => {
    const outline = outlineOf(inside, root)
    const closed = [...outline, ...outline.slice(0, 1)]
    const [corners, sides] = off(closed, (x, y) => Math.hypot(x - 2000, y - 1500) - 1400)
    expect(corners).toBeLessThan(1e-9)
    expect(sides).toBeLessThan(0.5)
    expect(outline.length).toBeLessThan(200)
  })
})

describe('Lengths have units', () => {
  it.each([
    ['width="100mm" height="75mm"', '<rect x="25mm" y="2.5cm" width="50mm" height="25mm"/>'],
    ['width="10in" height="7.5in"', '<rect x="2.5in" y="180pt" width="30pc" height="240px"/>'],
    [
      'viewBox="0 0 400 300"',
      '<rect x="25%" y="33.333333333333333%" width="50%" height="33.333333333333333%"/>',
    ],
    ['', '<rect x="1000" y="1000" width="50%" height="1000"/>'],
  ])('%s %s', (root, inside) => {
    near(outlineOf(inside, root), [
      [1000, 1000],
      [3000, 1000],
      [3000, 2000],
      [1000, 2000],
    ])
  })

  it('and one that depends on a font is not understood', () => {
    expect(problemOf('<svg><rect x="2em" width="9" height="9"/></svg>')).toBe('annotation.malformed-shape')
  })
})

describe('A text that is hardly SVG', () => {
  it.each([
    `<svg><g>${RECT}`,
    `<svg><g></p>${RECT}</svg>`,
    `<!DOCTYPE svg [<!ENTITY a "b">]><?xml version="1.0"?><svg>${RECT}</svg>`,
    `<svg>${RECT.replaceAll('"', "'")}</svg>`,
    `<svg>${RECT.replaceAll('"', '')}</svg>`.replace('100/>', '100 />'),
    `<svg>${RECT.replace('"100"', '"&#49;00"')}</svg>`,
    `<html><body><svg:svg xmlns:svg="http://www.w3.org/2000/svg"><svg:${RECT.slice(1)}</svg:svg></body></html>`,
    `<svg><defs><rect width="1"/></defs><symbol><rect width="1"/></symbol><marker><path d="M0 0"/></marker>${RECT}</svg>`,
    `<svg><![CDATA[<rect width="1"/>]]><!-- <rect/> --><style>rect > a {}</style>${RECT}</svg>`,
  ])('is looked through for shapes all the same: %s', (text) => {
    const region = readSvgOutline(text, PAGE)
    expect('outline' in region && region.outline).toEqual(CORNERS)
  })

  it.each([
    ['', 'no-shape'],
    ['<svg><rect', 'no-shape'],
    ['<svg><defs><rect width="9" height="9"/></svg>', 'no-shape'],
    ['<svg><path/></svg>', 'malformed-shape'],
    ['<svg><path d="M 1 1 L 5"/></svg>', 'malformed-shape'],
    ['<svg><path d="L 1 1 2 2"/></svg>', 'malformed-shape'],
    ['<svg><path d="M 1 1 X 2 2"/></svg>', 'malformed-shape'],
    [`<svg>${'<g>'.repeat(300)}<rect/></svg>`, 'nested-too-deep'],
    [`<svg><path d="M0 0 ${'q 1e7 1e7 1 1 '.repeat(400)}"/></svg>`, 'too-many-corners'],
  ])('is refused with its reason', (text, code) => {
    expect(problemOf(text)).toBe(`annotation.${code}`)
  })

  it('is never worse than refused', () => {
    const pieces = fc.constantFrom(
      '<svg>',
      '<g transform="',
      'scale(2)',
      'matrix(1,2)',
      '">',
      '<path d="',
      'M 1 1',
      'A 5 5 0 1 1 9 9',
      'C1 2 3 4 5 6',
      'z',
      '-1e999',
      '<circle r="',
      '5mm',
      '%',
      '"/>',
      '</g>',
      '<defs>',
      '<!--',
      '&#x110000;',
      '\u0000',
    )
    fc.assert(
      fc.property(fc.array(fc.oneof(pieces, fc.string({ maxLength: 4 })), { maxLength: 14 }), (text) => {
        const region = readSvgOutline(text.join(''), PAGE)
        if ('problem' in region) expect(inWords(region.problem)).not.toBe('')
        else for (const point of region.outline) expect(point.every(Number.isFinite)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
})
