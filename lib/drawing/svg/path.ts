import type { Paper, Step } from "../display";

const hundredths = (p: Paper): readonly [number, number] => [Math.round(p[0] * 100), Math.round(p[1] * 100)];

const short = (n: number): string => {
  const sign = n < 0 ? "-" : "";
  const a = Math.abs(n);
  const whole = Math.floor(a / 100), part = a % 100;
  if (part === 0) return `${sign}${whole}`;
  const tail = part % 10 === 0 ? `${part / 10}` : part < 10 ? `0${part}` : `${part}`;
  return `${sign}${whole === 0 ? "" : whole}.${tail}`;
};

/** Joins figures with the least that keeps them apart. */
const join = (figures: readonly number[]): string => {
  let text = "";
  for (const [i, n] of figures.entries()) {
    const s = short(n);
    text += i === 0 || s.startsWith("-") ? s : ` ${s}`;
  }
  return text;
};

/** Path data in relative steps of a hundredth of a millimetre. Each step is measured from the rounded point before it, so nothing drifts. */
export function pathData(steps: readonly Step[]): string {
  let text = "";
  let x = 0, y = 0, startX = 0, startY = 0;
  let last = "";
  for (const step of steps) {
    if (step.op === "Z") {
      text += "z";
      [x, y] = [startX, startY];
      last = "z";
      continue;
    }
    const [tx, ty] = hundredths(step.to);
    if (step.op === "M") {
      text += text === "" ? `M${join([tx, ty])}` : `m${join([tx - x, ty - y])}`;
      [startX, startY] = [tx, ty];
      last = "m";
    } else if (step.op === "L") {
      const dx = tx - x, dy = ty - y;
      if (dx === 0 && dy === 0 && last !== "m") continue;
      if (dy === 0) text += `h${short(dx)}`;
      else if (dx === 0) text += `v${short(dy)}`;
      else text += `l${join([dx, dy])}`;
      last = "l";
    } else if (step.op === "C") {
      const [ax, ay] = hundredths(step.c1), [bx, by] = hundredths(step.c2);
      text += `c${join([ax - x, ay - y, bx - x, by - y, tx - x, ty - y])}`;
      last = "c";
    }
    [x, y] = [tx, ty];
  }
  return text;
}
