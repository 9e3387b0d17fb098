const plain = /^(?:#[A-Za-z_0-9]|\.[A-Za-z_])[\w-]*$/;

/** A pick (`#id` or `.class`) as a recipe writes it: in quotes (`#"left wing"`) where its name has other signs than letters, digits, `_` and `-`. */
export function pickText(pick: string): string {
    if (plain.test(pick)) return pick;
    return `${pick.slice(0, 1)}"${pick.slice(1).replaceAll(/["\\]/g, '\\$&')}"`;
}
