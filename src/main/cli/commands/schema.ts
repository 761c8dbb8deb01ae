import { Argument, type Command } from 'commander'
import { helpOf } from '../arguments/options.ts'
import type { Output } from '../output/output.ts'
import { CliError } from '../words/cli-error.ts'
import { reason } from '../words/cli-words.ts'

const SUBJECTS = ['job', 'table', 'edit'] as const
type Subject = (typeof SUBJECTS)[number]

const HELP = `
Examples:
  $ scantling schema > job.schema.json
  $ scantling schema table`

async function schemaOf(subject: Subject): Promise<object> {
  switch (subject) {
    case 'job':
      return (await import('../../../core/job/model/schema.ts')).jobJsonSchema()
    case 'table':
      return (await import('../../../core/ledger/table/table-schema.ts')).tableJsonSchema()
    case 'edit':
      return (await import('../../../core/job/edits/edit.ts')).editJsonSchema()
  }
}

const subjectArgument = (): Argument =>
  new Argument('[SUBJECT]', 'what to describe')
    .choices(SUBJECTS)
    .default('job')
    .argParser((given: string): Subject => {
      const subject = SUBJECTS.find((one) => one === given)
      if (subject !== undefined) return subject
      const help = helpOf('schema')
      throw new CliError(reason('usage.no-such-subject', { subject: given, subjects: SUBJECTS, help }))
    })

export function addSchemaCommand(program: Command, output: Output): void {
  program
    .command('schema')
    .description('print the JSON Schema of job.json, of the table, or of an edit')
    .addArgument(subjectArgument())
    .addHelpText('after', HELP)
    .action(async (subject: Subject) => {
      output.print(`${JSON.stringify(await schemaOf(subject), null, 2)}\n`)
    })
}
