/** A drawing of our own to begin with: a gull over two waves, lopsided, so that a forgotten mirror shows. mm. */
export const placeholderPage = { width: 80, height: 60 };

export const placeholderDrawing = `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60">
  <title>A gull over two waves, to begin with: draw over it</title>
  <path id="gull" d="M12 24C18 13 27 11 34 20C41 9 53 8 66 17C54 14 46 17 40 27C38 30 34 31 32 27C28 20 20 19 12 24Z"/>
  <path class="wave" d="M8 42C16 34 24 34 32 40S48 46 56 39S68 34 72 38V43C66 40 62 41 57 45C48 52 39 51 31 46S16 42 8 48Z"/>
  <path class="wave" d="M20 53C27 48 33 48 40 52S54 55 62 50V54C54 59 46 60 39 57S27 54 20 57Z"/>
</svg>
`;
