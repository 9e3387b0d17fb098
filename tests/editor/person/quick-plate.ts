/** A recipe of our own that is soon made, with its waits as the text has them, one a line. */
export function quickPlate(...waits: readonly string[]): string {
    return `use "workshop.kerf"

recipe quick "Quick plate" {
  laser shed
  art heron "art/heron.svg" { width 60 mm }
  blank plate { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on plate { art heron  depth 0.3 mm  scan across grain  air off }
${waits.map((wait) => `  wait ${wait}\n`).join('')}}
`;
}
