import type { Command } from 'commander'
import type { Unit } from '../../../core/job/model/types.ts'
import { boxOf, type GivenBox } from '../arguments/given-boxes.ts'
import { aboveZeroOption, choiceOption, valueOption } from '../arguments/options.ts'
import { COLUMNS_WITHOUT_TERMINAL, type Output } from '../output/output.ts'

const HELP = `
Reads the figures that are printed or lettered on a drawing: dimensions in feet and inches with their fractions,
millimetres, decimals, angles, counts of holes. Reads only: no job is needed, and nothing is changed or kept.

With boxes, what stands in each is read, in the order that they are given: first those of --box, then those of
--boxes. A box is X,Y,WIDTH,HEIGHT in pixels of the page, X and Y of its upper left corner, drawn round one figure
with all of its fraction; lettering may run in any direction. Without boxes the figures of the whole page are found
and read, from above to below.

A figure is "clear" when it is sure enough to go by, else "doubtful". The percentage is how many of such readings are
right in the long run; what else the strokes could be follows, the likeliest first. What reads as no figure has none.
Text is laid out to the width of the terminal; elsewhere to COLUMNS, or ${COLUMNS_WITHOUT_TERMINAL} columns.

With --format json: {"figures": [{...}]}, in the order of the boxes, each with
  box           [x, y, width, height] round what was read, pixels of the page
  angle         degrees clockwise by which the lettering is turned from level: -90 reads from the right
  text          the figure in shop notation (14 3/8"), or null: nothing there reads as a figure
  value, unit   its value, a decimal; unit is in or mm as --unit says, degrees, or count; null without a figure
  kind          length, angle, area or count; null without a figure
  clear         true or false
  probability   that text is what is written there, 0 to 1
  alternatives  [{"text", "probability"}], what else it could be

Examples:
  $ scantling read plan.tif
  $ scantling read plan.tif --box 1200,340,220,80
  $ scantling read drawings.pdf --page 3 --box 1200,340,220,80 --box 90,2210,64,160 --unit mm
  $ scantling read plan.tif --boxes boxes.txt --format json > figures.json
  $ scantling read plan.tif --format json | jq -r '.figures[] | select(.clear | not) | .text'
  $ some-program | scantling read plan.tif --boxes - --format json`

const DIGITS = /^[1-9]\d{0,8}$/

interface Options {
  page?: number
  box?: GivenBox[]
  boxes?: string
  unit: Unit
  drawAt?: number
  passwordFile?: string
  format: 'text' | 'json'
}

export function addReadCommand(program: Command, output: Output): void {
  program
    .command('read')
    .description('read the figures on a scan: of some boxes, or of a whole page')
    .argument('<SCAN>', 'a scan file: PNG, JPEG, TIFF, WebP or PDF')
    .addOption(
      valueOption('read', ['--page <NUMBER>', 'the page of the scan (default: the first)'], 'page', (text) =>
        DIGITS.test(text) ? Number(text) : undefined,
      ),
    )
    .addOption(
      valueOption<GivenBox[]>(
        'read',
        ['--box <X,Y,WIDTH,HEIGHT>', 'a box round a figure, pixels of the page; may be given several times'],
        'box',
        (text, before = []) => {
          const box = boxOf(text)
          return box && [...before, box]
        },
      ),
    )
    .option('--boxes <FILE>', 'a file with a box a line; -: standard input')
    .addOption(
      choiceOption('read', '--unit <UNIT>', 'what a bare number means, and what values are in', ['in', 'mm']),
    )
    .addOption(
      aboveZeroOption(
        'read',
        '--draw-at <NUMBER>',
        'dots per inch for a page that is drawn (default: 400)',
        'dots-per-inch',
      ),
    )
    .option('--password-file <FILE>', 'a file whose first line opens a locked scan')
    .addOption(choiceOption('read', '--format <FORMAT>', 'how the figures are printed', ['text', 'json']))
    .addHelpText('after', HELP)
    .action(async (scan: string, options: Options) => {
      const { boxesIn, mustBeFew } = await import('../arguments/given-boxes.ts')
      const { readFigures } = await import('../actions/read-figures.ts')
      const { page, box, boxes: file, unit, drawAt, passwordFile, format } = options
      const wanted = file === undefined ? box : [...(box ?? []), ...(await boxesIn(file, output.stdin))]
      if (wanted !== undefined) mustBeFew(wanted)
      const readings = await readFigures(scan, wanted, { page, drawAt, passwordFile, unit })
      if (format === 'json') {
        const { figuresJson } = await import('../layout/figures-json.ts')
        output.print(figuresJson(readings, unit))
      } else {
        const { figuresText } = await import('../layout/figures-text.ts')
        output.print(figuresText(readings, output.width))
      }
    })
}
