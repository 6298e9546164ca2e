import type { Operation, Reply, Sent } from '@hubwright/contracts/operation';
import type { Process } from '@hubwright/contracts/people/operations';
import { type ReactNode, useLayoutEffect } from 'react';
import { z } from 'zod';
import { useCommand } from '../api/command.ts';
import { type ProblemError, problemFromIssues } from '../api/problem.ts';
import { SignatureDialog, type Signer } from './SignatureDialog.tsx';
import { SupervisorFields, useSupervision } from './SupervisorFields.tsx';
import { say } from './toasts.tsx';

export type { Signer } from './SignatureDialog.tsx';

export interface SignCommandProps<O extends Operation> {
  op: O;
  /** The command's input without the signature. */
  input: Omit<Sent<O>, 'signature'>;
  version?: number;
  signer: Signer;
  /** The process of the work signed: a trainee's supervisor is asked to sign too. */
  process?: Process;
  /** A second person who must sign too, such as a witness: their fields, what they entered, and how to forget it. */
  second?: { readonly fields: ReactNode; given: () => object; forget: () => void };
  /** What is signed, in short, as it will be recorded. */
  children: ReactNode;
  onSigned: (reply: Reply<O>) => void;
  /** Refused for something typed before the signature: go back to where it can be put right, and show the problem there. */
  onWrongInput?: (problem: ProblemError) => void;
  onClose: () => void;
}

function isAboutInput({ facts }: ProblemError): boolean {
  return facts.errors.some(({ pointer }) => !/^$|^\/(signature|supervisor|witness)/.test(pointer));
}

const toCome = /^(signature|witness)/;

/** What is wrong with the input apart from the signature that is still to come. */
function wrongBefore(op: Operation, input: object): ProblemError | undefined {
  const issues = op.input.safeParse(input).error?.issues.filter(({ path }) => !toCome.test(String(path[0]))) ?? [];
  return issues.length > 0 ? problemFromIssues(new z.ZodError(issues)) : undefined;
}

/** One signed command: shows what is signed, takes the PIN or password, sends once. */
export function SignCommand<O extends Operation>(props: SignCommandProps<O>) {
  const command = useCommand(props.op);
  const { op, input, onWrongInput } = props;
  const supervision = useSupervision(op.countersigns ? props.process : undefined);
  // What would be refused anyway is said before the signature, not after it.
  useLayoutEffect(() => {
    const problem = wrongBefore(op, input);
    if (problem) onWrongInput?.(problem);
  }, [op, input, onWrongInput]);
  return (
    <SignatureDialog
      isOpen
      onClose={props.onClose}
      meaning={props.op.signs ?? ''}
      signer={props.signer}
      problem={command.error}
      isPending={command.isPending || supervision.isAsking}
      beside={supervision.isNeeded ? <SupervisorFields of={supervision} /> : (props.second?.fields ?? null)}
      onSign={(signature) => {
        const signed = { ...props.input, ...supervision.given(), ...props.second?.given(), signature };
        supervision.forget();
        props.second?.forget();
        command.mutate(
          {
            input: signed as unknown as Sent<O>,
            ...(props.version === undefined ? {} : { version: props.version }),
          },
          {
            onSuccess: (reply) => {
              // First, so that a feature's own, longer message may take its place.
              say(`Signed by ${props.signer.displayName}: ${op.signs}`);
              props.onSigned(reply);
            },
            onError: (problem) => {
              if (isAboutInput(problem)) props.onWrongInput?.(problem);
            },
          },
        );
      }}
    >
      {props.children}
    </SignatureDialog>
  );
}
