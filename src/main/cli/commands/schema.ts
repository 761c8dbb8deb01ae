import { Argument, type Command } from 'commander'
import { print } from '../output/output.ts'

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

export function addSchemaCommand(program: Command): void {
  program
    .command('schema')
    .description('print the JSON Schema of job.json, of the table, or of an edit')
    .addArgument(new Argument('[SUBJECT]', 'what to describe').choices(SUBJECTS).default('job'))
    .addHelpText('after', HELP)
    .action(async (subject: Subject) => {
      print(`${JSON.stringify(await schemaOf(subject), null, 2)}\n`)
    })
}
