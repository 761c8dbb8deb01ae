import { spreadOf } from '../../core/handoff/table/stated-value.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import './evidence-piece.css'
import { useState } from 'react'
import { afterNoun, called, labelOf } from '../../core/job/ids/label.ts'
import type { Evidence } from '../../core/job/model/types.ts'
import type { TableEvidence } from '../../core/ledger/table/table.ts'
import { capital } from '../../core/words/capital.ts'
import { useBench } from '../bench/bench-store.ts'
import { makeEdit } from '../bench/edits.ts'
import { changedSince, momentInWords, personName, signature } from '../bench/signature.ts'
import { Button } from '../parts/button.tsx'
import { Figure } from '../parts/figure.tsx'
import { BasisSample } from '../table/basis-sample.tsx'
import { ScanCrop } from '../tiles/scan-crop.tsx'
import type { CardProps } from './card-props.ts'
import { DoubtfulFigure } from './doubtful-figure.tsx'
import { evidencePart } from './evidence-box.ts'
import { EvidenceWords } from './evidence-words.tsx'
import { WithdrawForm } from './withdraw-form.tsx'

/** Of the crop, CSS pixels: the desk is of one width, and marks lie further apart than a figure is large. */
const CROP_WIDTH = 296
const CROP_HEIGHT = { printed: 88, scaled: 132, found: 88, derived: 88 }

interface EvidencePieceProps extends CardProps {
  piece: Evidence
  /** What the table makes of it; undefined until it is worked out. */
  weighed: TableEvidence | undefined
  governing: boolean
}

/** One reason to believe a value: where it comes from, what it says, and how it agrees with the rest. */
export function EvidencePiece(props: EvidencePieceProps) {
  const { job, dimension, piece, weighed, governing, writable } = props
  const [withdrawing, setWithdrawing] = useState(false)
  const part = evidencePart(piece, job)
  const doubtful = useBench(({ table }) =>
    table?.doubtful?.find((one) => one.dimension === dimension.name && one.evidence === piece.id),
  )
  const withdrawn = piece.withdrawn !== undefined
  const by = `${personName(job, piece.by)}, ${momentInWords(piece.at)}${changedSince(job, piece)}`
  const withdrawnBy = signature(job, piece.withdrawnBy, piece.withdrawnAt)
  const target = { dimension: dimension.name, id: piece.id }
  const evidence = called('evidence', piece)
  return (
    <section
      className="evidence-piece"
      aria-label={`${capital(evidence)}, ${basisWord(piece.basis)}`}
      data-withdrawn={withdrawn || undefined}
      data-governing={governing || undefined}
    >
      <header className="evidence-piece-head">
        <BasisSample basis={piece.basis} />
        <span className="evidence-piece-basis">{basisWord(piece.basis)}</span>
        <code>{afterNoun(piece)}</code>
        <span className="evidence-piece-part">{withdrawn ? 'withdrawn' : governing ? 'adopted' : ''}</span>
      </header>
      {part !== null && (
        <ScanCrop
          sheet={part.sheet}
          box={part.box}
          width={CROP_WIDTH}
          height={CROP_HEIGHT[piece.basis]}
          label={`The part of the sheet that ${evidence} of ${dimension.name} comes from`}
        />
      )}
      <Value {...props} />
      <EvidenceWords job={job} piece={piece} listed={doubtful !== undefined} />
      {doubtful !== undefined && (
        <DoubtfulFigure
          job={job}
          dimension={dimension.name}
          piece={piece}
          doubtful={doubtful}
          unit={props.unit}
          writable={writable}
        />
      )}
      {withdrawn ? (
        <>
          <p className="evidence-piece-problem">Withdrawn: {piece.withdrawn}</p>
          {withdrawnBy !== null && <p className="dimension-card-small">Withdrawn by {withdrawnBy}</p>}
        </>
      ) : (
        weighed?.problem !== undefined && <p className="evidence-piece-problem">{weighed.problem}</p>
      )}
      {!withdrawn &&
        weighed?.remarks?.map((remark) => (
          <p key={remark} className="evidence-piece-problem">
            {remark}
          </p>
        ))}
      {piece.note !== undefined && <p>{piece.note}</p>}
      <p className="dimension-card-small">{withdrawn ? `Given by ${by}` : by}</p>
      {withdrawing && (
        <WithdrawForm
          {...target}
          label={labelOf(piece)}
          writable={writable}
          onEnd={() => setWithdrawing(false)}
        />
      )}
      {writable && !withdrawing && (
        <div className="dimension-card-actions">
          {withdrawn ? (
            <Button
              kind="quiet"
              label={`Reinstate ${evidence}`}
              onPress={() => void makeEdit({ do: 'reinstate-evidence', ...target })}
            >
              Reinstate
            </Button>
          ) : (
            <>
              {dimension.adopt !== piece.id && typeof weighed?.value === 'number' && (
                <Button
                  kind="quiet"
                  label={`Adopt this, ${evidence}`}
                  hint="The table gives this value, by choice, whatever the rules say."
                  onPress={() => void makeEdit({ do: 'adopt', dimension: dimension.name, adopt: piece.id })}
                >
                  Adopt this
                </Button>
              )}
              <Button
                kind="quiet"
                label={`Withdraw ${evidence}`}
                hint="It stays on the card and no longer counts."
                onPress={() => setWithdrawing(true)}
              >
                Withdraw
              </Button>
            </>
          )}
        </div>
      )}
    </section>
  )
}

/** `3 5/8"` or `3.626" ± 0.031"`, what a figure counts as when it is compared, and whether it agrees. */
function Value({ dimension, weighed, unit }: EvidencePieceProps) {
  if (weighed === undefined || weighed.value === null) return null
  const { en, exact = false, odd = false, countsWith } = weighed
  const spread = spreadOf(weighed, dimension.kind, unit)
  return (
    <p className="evidence-piece-value">
      <Figure text={exact ? weighed.written : `${weighed.written}${spread}`} />
      {exact && spread !== '' && <span className="dimension-card-small">compared as{spread}</span>}
      {en !== undefined && (
        <span className="evidence-piece-en" data-disputes={odd || undefined} data-en={en.toFixed(2)}>
          {odd ? 'does not agree' : countsWith === undefined ? 'agrees' : 'counts once'}
        </span>
      )}
    </p>
  )
}
