import type { Job } from '../../core/job/model/types.ts'
import { useBench } from '../bench/bench-store.ts'
import { applied, matrixOf, toPixel } from '../camera/camera.ts'
import { placesIn, type UnderLettering } from '../overlay/ground.ts'
import { type InkAbout, inkMap } from '../overlay/ink-map.ts'
import { printedOnScreen } from '../overlay/note-mark.ts'
import { printedOn } from '../overlay/notes-items.ts'
import { overviewAddress } from '../tiles/addresses.ts'
import type { GreyTile } from '../tiles/picture-forms.ts'
import type { SheetFrame } from '../tiles/shown-level.ts'
import { keptPictures } from '../tiles/the-pictures.ts'

/** A word that is covered in a corner of a box is hidden as well: so much the fullest place counts beside all of it. */
const FULLEST = 0.25

/** What lettering over the sheet on the bench is kept off: printed figures that the job knows, and the drawing itself. */
export class SheetGround {
  #ink: { about: InkAbout; of: GreyTile } | undefined
  #printed: { boxes: ReturnType<typeof printedOn>; of: Job; sheet: string } | undefined
  /** Where figures stood last, of one sheet. */
  #stood = new Map<string, number>()
  #sheet = ''

  /** For a sheet as it is looked at now. */
  of({ pictures, camera, box }: SheetFrame): UnderLettering {
    const { sheet, width } = pictures
    if (sheet !== this.#sheet) {
      this.#sheet = sheet
      this.#stood = new Map()
    }
    const matrix = matrixOf(camera, box)
    const about = this.#inkOf(keptPictures.get(overviewAddress(pictures), 'grey'), width)
    return {
      printed: printedOnScreen(this.#printedOn(sheet), (pixel) => applied(matrix, pixel)),
      ink: (lettered) => {
        if (about === undefined) return 0
        const places = placesIn(lettered)
        const around = lettered.height / 6 / camera.zoom
        const inks = places.map((at) => about(toPixel(camera, box, at), around))
        return inks.reduce((sum, ink) => sum + ink, 0) / inks.length + FULLEST * Math.max(...inks)
      },
      stood: this.#stood,
    }
  }

  #inkOf(greys: GreyTile | undefined, width: number): InkAbout | undefined {
    if (greys === undefined) return undefined
    if (this.#ink?.of !== greys) this.#ink = { about: inkMap(greys, width), of: greys }
    return this.#ink.about
  }

  #printedOn(sheet: string): ReturnType<typeof printedOn> {
    const job = useBench.getState().opened?.job
    if (job === undefined) return []
    if (this.#printed?.of !== job || this.#printed.sheet !== sheet) {
      this.#printed = { boxes: printedOn(job, sheet), of: job, sheet }
    }
    return this.#printed.boxes
  }
}
