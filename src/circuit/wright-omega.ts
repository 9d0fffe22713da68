/**
 * The Wright omega function for real arguments: the w with w + ln w = x.
 *
 * It gives the current of a diode with a resistor in closed form (Banwell and Jayakumar, Electronics
 * Letters 36(4), 2000), so that the pair is one element whose slope never exceeds 1/R and Newton needs no
 * exponent limiting. The step is the fourth-order one of Fritsch, Shafer and Crowley (CACM 16, 1973).
 */
export function wrightOmega(x: number): number {
  // Below this w equals exp(x) to all digits of a double.
  if (x < -38) return Math.exp(x);
  let w =
    x < -1 ? Math.exp(x) : x < 1.5 ? 0.5671432904097838 + 0.3618962566348892 * x : x - Math.log(x);
  for (let step = 0; step < 2; step += 1) {
    const r = x - w - Math.log(w);
    const w1 = 1 + w;
    const t = w1 * (w1 + (2 / 3) * r);
    w *= 1 + (r / w1) * ((t - r / 2) / (t - r));
  }
  return w;
}
