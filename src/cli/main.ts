/** The command line. Each command's work is loaded when it is asked for, so that help is instant. */
import { Command, InvalidArgumentError, Option } from 'commander';
import { EXIT_MEANINGS } from './exit-codes.ts';
import { tellFailure } from './failure.ts';
import { forgiveClosedStreams } from './output.ts';
import { modelVersion, toolVersion } from './versions.ts';

function wholeNumber(low: number, high: number) {
  return (text: string): number => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < low || value > high)
      throw new InvalidArgumentError(`A whole number from ${low} to ${high} is expected.`);
    return value;
  };
}

function seedText(text: string): string {
  if (!/^[\p{L}\p{N} ._-]{1,64}$/u.test(text))
    throw new InvalidArgumentError('1 to 64 letters, digits, spaces, dots, hyphens or underscores are expected.');
  return text;
}

function program(): Command {
  const cli = new Command('pulsejet-study')
    .description('Finds and ranks pulsejet designs for a builder, and writes the report to build from.')
    .version(`pulsejet-study ${toolVersion}, performance model ${modelVersion.slice(0, 12)}`)
    .exitOverride()
    .showHelpAfterError('Add --help for the options.')
    .addHelpText(
      'after',
      `\nExit codes:\n${EXIT_MEANINGS.map(([code, meaning]) => `  ${String(code).padStart(3)}  ${meaning}`).join('\n')}`,
    );

  cli
    .command('run')
    .description('Search the designs of one or more studies, rank them and write their reports.')
    .argument('<files...>', 'study files (YAML or JSON), or patterns such as "configs/*.yaml"')
    .option('--out <folder>', 'where the folders of the studies lie', 'reports')
    .option('--workers <number>', 'threads that evaluate (default: one a processor)', wholeNumber(1, 1024))
    .option(
      '--queue [url]',
      'have workers on other machines evaluate, through a queue (redis://host:port; without a value: PULSEJET_QUEUE_URL)',
    )
    .option('--evaluations <number>', 'budget of evaluations, instead of the file’s', wholeNumber(1, 100_000_000))
    .option('--seed <text>', 'seed of the search, instead of the file’s', seedText)
    .option('--no-pdf', 'leave out the PDF')
    .option('--fresh', 'begin anew; what is stored of an earlier run is put aside')
    .addHelpText('after', '\nA run that was interrupted goes on when the same command is given again.')
    .action(async (files, options) => (await import('./commands/run.ts')).runCommand(files, options));

  cli
    .command('worker')
    .description('Evaluate for runs on other machines until Ctrl-C.')
    .option('--queue [url]', 'the queue to serve (redis://host:port; default: PULSEJET_QUEUE_URL)')
    .option('--workers <number>', 'threads that evaluate (default: one a processor)', wholeNumber(1, 1024))
    .option('--name <text>', 'what runs call this worker (default: host and process number)', seedText)
    .action(async (options) => (await import('./commands/worker.ts')).workerCommand(options));

  cli
    .command('evaluate')
    .description('Evaluate one engine: does it run, and with what thrust, fuel use and life.')
    .argument('<file>', 'engine file (YAML or JSON)')
    .option('--json', 'print everything as JSON in SI units (see "schema --evaluation")')
    .option('--trace <file.csv>', 'write one cycle as CSV')
    .action(async (file, options) => (await import('./commands/evaluate.ts')).evaluateCommand(file, options));

  cli
    .command('report')
    .description('Write the report of a finished study again, without evaluating.')
    .argument('<folder>', 'folder of the study')
    .option('--no-pdf', 'leave out the PDF')
    .action(async (folder, options) => (await import('./commands/report.ts')).reportCommand(folder, options));

  cli
    .command('compare')
    .description('Put the best of several finished studies side by side.')
    .argument('<folders...>', 'folders of the studies, at least two')
    .option('--out <folder>', 'where to write the comparison', 'reports/comparison')
    .option('--no-pdf', 'leave out the PDF')
    .action(async (folders, options) => (await import('./commands/compare.ts')).compareCommand(folders, options));

  cli
    .command('send')
    .description('Mail the report of a finished study. The transport is set by the environment (see README).')
    .argument('<folder>', 'folder of the study')
    .requiredOption('--to <addresses...>', 'who gets it')
    .option('--from <address>', 'sender, instead of the study’s')
    .option('--subject <text>', 'subject, instead of the study’s')
    .action(async (folder, options) => (await import('./commands/send.ts')).sendCommand(folder, options));

  cli
    .command('schema')
    .description('Print the JSON Schema of study files, for editors.')
    .addOption(new Option('--engine', 'of engine files instead').conflicts(['results', 'evaluation']))
    .addOption(new Option('--results', 'of results.json instead').conflicts(['engine', 'evaluation']))
    .addOption(new Option('--evaluation', 'of "evaluate --json" instead').conflicts(['engine', 'results']))
    .action(async (options) => (await import('./commands/schema.ts')).schemaCommand(options));

  // Options set on the program do not reach commands that were added to it.
  for (const command of cli.commands)
    command.exitOverride().showHelpAfterError(`Add --help for the options of "${command.name()}".`);
  return cli;
}

forgiveClosedStreams();
try {
  await program().parseAsync();
} catch (error) {
  process.exitCode = tellFailure(error);
}
