/** An option of a command: what parseArgs of Node reads of it, and what help, the manual and completion say. */
export type OptionUsage =
    | { readonly type: 'boolean'; readonly default: false; readonly what: string }
    | {
          readonly type: 'string';
          readonly default?: string;
          /** What stands for the value in the help, in capitals. */
          readonly value: string;
          readonly choices?: readonly string[];
          readonly what: string;
      };

/** How a command is called. Everything that tells a person or a shell about it is made from this. */
export interface CommandUsage {
    readonly name: string;
    /** What follows the name, options aside; one for each way of calling it. */
    readonly forms: readonly string[];
    /** In a list of all commands; begins with a small letter, no full stop. */
    readonly brief: string;
    /** What a person should know before using it; one paragraph each. */
    readonly more: readonly string[];
    readonly options: Readonly<Record<string, OptionUsage>>;
    readonly examples: readonly { readonly line: string; readonly what: string }[];
    /** What is unlike the exit codes of all others. */
    readonly codes?: readonly string[];
}

type ValueOf<Option extends OptionUsage> = Option extends { type: 'boolean' }
    ? boolean
    :
          | (Option extends { choices: readonly (infer Choice)[] } ? Choice : string)
          | (Option extends { default: string } ? never : undefined);

/** What was written for each option; what was left out has its default. */
export type ValuesOf<Usage extends CommandUsage> = {
    readonly [Name in keyof Usage['options']]: ValueOf<Usage['options'][Name]>;
};

/** The words that an option of this command takes. */
export type ChoiceOf<Usage extends CommandUsage, Name extends keyof Usage['options']> = Usage['options'][Name] extends {
    choices: readonly (infer Choice extends string)[];
}
    ? Choice
    : never;
