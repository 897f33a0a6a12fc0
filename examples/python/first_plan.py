"""From the root of the checkout: a plan for the walnut clock case, and one's own beside it."""

import levigate

job = levigate.Job.load("data/demo/job.json")
stack = levigate.Stack.load("data/demo/stack.json")
plan = levigate.plan(job, stack)
for step in plan.steps:
    print(f"{step.label:6} {step.minutes:5.0f} min, {step.reading_gu:3.0f} GU")
usual = levigate.evaluate(job, stack, ["a-p600", "a-p800", "a-p1000", "a-p1200", "a-p1500", "b-pad"])
print(f"{plan.total.minutes:.0f} min at usual numbers, not {usual.total.minutes:.0f}")
print(usual.findings[0].message if usual.findings else "It breaks no rule.")
