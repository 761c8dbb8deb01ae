import { statedValue } from '../../core/handoff/table/stated-value.ts'
import { statusText } from '../../core/handoff/table/status-text.ts'
import {
  calibrationSentence,
  cautionsBesideViews,
  numberedViews,
  relationLine,
  viewName,
  viewRemarks,
} from '../../core/handoff/table/view-lines.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import type { Job, Sheet } from '../../core/job/model/types.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import { momentInWords } from '../bench/signature.ts'
import { Figure } from '../parts/figure.tsx'
import { UNIT_WORDS } from '../words/unit-words.ts'

interface PrintedPageProps {
  job: Job
  table: Table
  /** Whether the table has all that is in the job. */
  isNewest: boolean
  printedAt: Date
}

/** The table of a job for paper: what it is, every row, how its views are calibrated, and what to mind. */
export function PrintedPage({ job, table, isNewest, printedAt }: PrintedPageProps) {
  const edition = job.edition === undefined ? '' : `, edition ${job.edition}`
  const cautions = cautionsBesideViews(table)
  return (
    <>
      <h1>{table.job}</h1>
      <p>
        {`Table of dimensions${edition}, printed ${momentInWords(printedAt.toISOString())}. Lengths in ${UNIT_WORDS[table.unit]}. U is the expanded uncertainty at 95 %.`}
      </p>
      {!isNewest && (
        <p>A newer table was still being worked out: what was entered last is not in this one.</p>
      )}
      {job.sheets.length > 0 && <p>{`Drawn from: ${job.sheets.map(sheetInWords).join('; ')}.`}</p>}
      <Rows table={table} />
      {table.views.length > 0 && (
        <Lines title="How the views are calibrated">
          {table.views.flatMap((view) => [
            `${viewName(view)}: ${calibrationSentence(view, table.unit)}`,
            ...viewRemarks(view),
          ])}
        </Lines>
      )}
      {table.relations.length > 0 && (
        <Lines title="Relations">
          {table.relations.map((relation) => relationLine(relation, table.unit))}
        </Lines>
      )}
      {cautions.length > 0 && <Lines title="Cautions">{cautions}</Lines>}
      {numberedViews(table).length > 0 && (
        <Lines title="The numbers behind the views">
          {numberedViews(table).map(({ name, numbers }) => `${name}: ${numbers}`)}
        </Lines>
      )}
    </>
  )
}

function sheetInWords({ title, record }: Sheet): string {
  const { identifier, date } = record
  const more = [identifier, date].filter((one) => one !== undefined && one !== '')
  return more.length === 0 ? title : `${title} (${more.join(', ')})`
}

function Rows({ table }: { table: Table }) {
  return (
    <table>
      <thead>
        <tr>
          <th>what</th>
          <th>name</th>
          <th>figure ± U (95 %)</th>
          <th>basis</th>
          <th>status</th>
          <th className="printed-table-count">off</th>
          <th>why</th>
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row) => (
          <tr key={row.name}>
            <td className="printed-table-what">{row.label}</td>
            <td>{row.name}</td>
            <td className="printed-table-figure">
              <Figure text={statedValue(row, table.unit)} />
            </td>
            <td>{row.basis === null ? '—' : basisWord(row.basis)}</td>
            <td>{statusText(row)}</td>
            <td className="printed-table-count">{row.count}</td>
            <td className="printed-table-why">{row.why}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Lines({ title, children }: { title: string; children: readonly string[] }) {
  return (
    <section>
      <h2>{title}</h2>
      <ul>
        {children.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  )
}
