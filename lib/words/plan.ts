/** The words that stand on a plan and name its pieces, by language. */
export type PlanWords = {
  readonly table: (number: string) => string;
  readonly round: (size: string) => string;
  readonly places: (n: number, wheelchairs: number) => string;
  readonly part: (k: number, of: number) => string;
  readonly chairsInRows: (n: number) => string;
  readonly wayOut: string;
  readonly wheelchairPlace: string;
  readonly level: (which: "lower" | "upper" | number) => string;
  readonly waysDrawn: (told: { readonly from: number; readonly of: number; readonly far: string; readonly about: string }) => string;
};

const en: PlanWords = {
  table: (number) => `Table ${number}`,
  round: (size) => `round ${size}`,
  places: (n, wheelchairs) => `${n} ${n === 1 ? "place" : "places"}${wheelchairs > 0 ? `, ${wheelchairs} for a wheelchair` : ""}`,
  part: (k, of) => `part ${k} of ${of}`,
  chairsInRows: (n) => `${n} ${n === 1 ? "chair" : "chairs"} in rows`,
  wayOut: "Way out",
  wheelchairPlace: "wheelchair place",
  level: (which) => (which === "lower" ? "Lower level" : which === "upper" ? "Upper level" : `Level ${which}`),
  waysDrawn: ({ from, of, far, about }) => `Ways out are drawn from ${from} of ${of} tables and rows; the longest, from ${far}, is about ${about}.`,
};

const es: PlanWords = {
  table: (number) => `Mesa ${number}`,
  round: (size) => `redonda ${size}`,
  places: (n, wheelchairs) => `${n} ${n === 1 ? "plaza" : "plazas"}${wheelchairs > 0 ? `, ${wheelchairs} para silla de ruedas` : ""}`,
  part: (k, of) => `parte ${k} de ${of}`,
  chairsInRows: (n) => `${n} ${n === 1 ? "silla" : "sillas"} en filas`,
  wayOut: "Salida",
  wheelchairPlace: "silla de ruedas",
  level: (which) => (which === "lower" ? "Nivel inferior" : which === "upper" ? "Nivel superior" : `Nivel ${which}`),
  waysDrawn: ({ from, of, far, about }) => `Las salidas se dibujan desde ${from} de ${of} mesas y filas; la más larga, desde ${far}, mide unos ${about}.`,
};

/** The words of a locale; English where there are none of its language. */
export const planWords = (locale: string): PlanWords => (locale.split("-")[0] === "es" ? es : en);
