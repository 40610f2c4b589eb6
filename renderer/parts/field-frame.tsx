import { createContext, useContext, useEffect } from 'react';

/** What a form gives its fields: where to report what can't be read, and the refusal that came back for them. */
export interface FormFields {
  /** Tell the form that the field named can't be read now (`null`: it can). */
  readonly report: (name: string, problem: string | null) => void;
  /** The form was submitted with problems, so every one of them is shown, touched or not. */
  readonly showAll: boolean;
  /** What the workbook said about the field when it refused the act. */
  readonly refused: (name: string) => string | null;
}

const noForm: FormFields = { report: () => undefined, showAll: false, refused: () => null };

export const FormContext = createContext<FormFields>(noForm);

/** What is common to every field of a form. */
export interface FieldProps {
  /** The name that refusals use for the field. */
  readonly name: string;
  readonly label: string;
  readonly description?: string;
  readonly required?: boolean;
  readonly disabled?: boolean;
  /** A problem that the screen knows about and the field can't. */
  readonly error?: string;
  readonly autoFocus?: boolean;
}

/**
 * The error text to show below a field, and the form's notice of it. A problem is shown once the field has been left
 * or the form was submitted, never while the first characters are being typed.
 */
export function useFieldError(props: FieldProps, problem: string | null, left: boolean): string | null {
  const { name, error } = props;
  const form = useContext(FormContext);
  const { report } = form;
  useEffect(() => {
    report(name, problem);
    return () => report(name, null);
  }, [report, name, problem]);
  if (error !== undefined) return error;
  const refused = form.refused(name);
  if (refused !== null) return refused;
  return left || form.showAll ? problem : null;
}

/** The attributes that every field hands to its input; undefined ones are left out for the strict types. */
export function inputAttributes(props: FieldProps, error: string | null) {
  return {
    name: props.name,
    label: props.label,
    error: error ?? false,
    'data-autofocus': props.autoFocus === true ? true : undefined,
    ...(props.description === undefined ? {} : { description: props.description }),
    required: props.required === true,
    disabled: props.disabled === true,
    autoComplete: 'off',
  };
}
