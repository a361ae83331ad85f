export { formatArea, formatLength, formatSize, lengthStyle, parseLength, type LengthStyle } from "./length";
export { formatMoney, minorDigits } from "./money";
export { formatDay } from "./day";
