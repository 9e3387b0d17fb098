@echo off
rem The command line that comes with the extension, in the editor's terminals: run by the Node that the editor itself runs on.
setlocal
set ELECTRON_RUN_AS_NODE=1
if not defined KERFBOOK_NODE set KERFBOOK_NODE=node
"%KERFBOOK_NODE%" "%~dp0..\..\dist\cli.cjs" %*
