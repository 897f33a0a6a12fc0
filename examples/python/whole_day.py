"""From the root of the checkout: runs, edges and wheels of a whole day, and what a number rests on."""

import levigate

job = levigate.Job.load("data/demo/day.json")
plan = levigate.plan(job, levigate.Stack.load("data/demo/day_stack.json"))
for local in plan.before:
    print(f"{local.zone}, {local.defect.kind}: {local.work.verdict}")
for sheet in plan.stack.sheets:
    if sheet.block is not None and sheet.block.wheel is not None:
        speed = levigate.speed_finding(sheet.block.wheel, job.coating.name)
        print(f"{sheet.id}: {speed.surface_speed_m_s:.1f} m/s, {speed.verdict}")
for reliance in plan.relies_on[:3]:
    print(f"{reliance.subject}, {reliance.quantity}: {reliance.basis}, {reliance.citation}")
print(levigate.source("felt", "force_n"))
