import { pictureAddress } from '../../contract/picture-addresses.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import type { Tile } from './wanted-tiles.ts'

export const overviewAddress = ({ sheet, version }: SheetPictures): string =>
  pictureAddress({ sheet, version, kind: 'overview' })

export const groundAddress = ({ sheet, version }: SheetPictures): string =>
  pictureAddress({ sheet, version, kind: 'ground' })

export const tileAddress = ({ sheet, version }: SheetPictures, tile: Tile): string =>
  pictureAddress({ sheet, version, kind: 'tile', ...tile })
