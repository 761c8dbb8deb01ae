import { BRACKET } from './bracket.ts'
import { type Chance, chance, STREAM } from './chance.ts'
import { type DrawnView, draw } from './draughtsman.ts'
import { type Board, newBoard } from './drawing-board.ts'
import { ELEVATION } from './elevation.ts'
import { FOOT_PLAN } from './foot-plan.ts'
import { layOutBracket } from './lay-out-bracket.ts'
import { layOutElevation } from './lay-out-elevation.ts'
import { layOutFootPlan } from './lay-out-foot-plan.ts'
import { layOutMargins } from './title-block.ts'

export interface DrawnSheet {
  views: { elevation: DrawnView; 'foot-plan': DrawnView; bracket: DrawnView }
  board: Board
}

/** The sheet as it left the drawing office, with the draughtsman's errors of this seed. */
export function drawSheet(seed: number): DrawnSheet {
  const errors: Chance = chance(seed, STREAM.draughting)
  const views = {
    elevation: draw(ELEVATION, errors),
    'foot-plan': draw(FOOT_PLAN, errors),
    bracket: draw(BRACKET, errors),
  }
  const board = newBoard()
  layOutMargins(board)
  layOutElevation(board, views.elevation)
  layOutFootPlan(board, views['foot-plan'])
  layOutBracket(board, views.bracket)
  return { views, board }
}
