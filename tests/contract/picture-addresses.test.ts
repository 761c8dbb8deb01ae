import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PictureWanted, pictureAddress, pictureAt } from '../../src/contract/picture-addresses.ts'

const sheet = fc.string({ minLength: 1, unit: 'grapheme' })
const name = { sheet, version: sheet }
const anyPicture: fc.Arbitrary<PictureWanted> = fc.oneof(
  fc.record({ ...name, kind: fc.constantFrom('overview' as const, 'thumbnail' as const, 'ground' as const) }),
  fc.record({
    ...name,
    kind: fc.constant('tile' as const),
    level: fc.nat(20),
    column: fc.nat(99_999),
    row: fc.nat(99_999),
  }),
)

describe('the address of a picture', () => {
  it('leads back to the picture, whatever the sheet is called', () => {
    fc.assert(
      fc.property(anyPicture, (wanted) => {
        expect(pictureAt(pictureAddress(wanted))).toEqual(wanted)
      }),
    )
  })

  it('has no slash, dot or space of a name outside its place', () => {
    const address = pictureAddress({ sheet: '../../etc passwd', version: 'v', kind: 'overview' })
    expect(address.split('/')).toHaveLength(4)
  })

  it.each([
    '',
    'picture',
    'picture/S1',
    'picture/S1/v',
    'picture/S1/v/whole',
    'picture/S1/v/1/2',
    'picture/S1/v/-1/0/0',
  ])('is none when it is %j', (address) => expect(pictureAt(address)).toBeNull())

  it.each([
    'picture/S1/v/1/2/3/4',
    'picture/S1/v/1e3/0/0',
    'picture/%E0%A4%A/v/overview',
    'scan/S1/v/overview',
  ])('is none when it is %j', (address) => expect(pictureAt(address)).toBeNull())
})
