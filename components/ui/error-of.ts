/** One answer that could not be kept as given: the field's name in the form, and how to mend it. */
export type FieldError = { readonly field: string; readonly message: string };

export const errorOf = (errors: readonly FieldError[], field: string): string | undefined =>
  errors.find((e) => e.field === field)?.message;
