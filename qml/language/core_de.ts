<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE">
<context>
    <name></name>
    <message id="not put right">
        <source></source>
        <translation>nicht berichtigt</translation>
    </message>
    <message id="put right after {1}">
        <source></source>
        <translation>nach {1} berichtigt</translation>
    </message>
</context>
</TS>
