import { UsageError } from './usage-error';

/** What `--format` asked for. Throws a UsageError for any other word, what every object has by itself included. */
export function chooseFormat<Format>(formats: Readonly<Record<string, Format>>, asked: string): Format {
    if (!Object.hasOwn(formats, asked)) throw new UsageError(`--format is one of ${Object.keys(formats).join(', ')}.`);
    return formats[asked]!;
}
