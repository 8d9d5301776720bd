//! A job that is only looked at: one that came by a link, a lesson shown to a class. Nothing that the pointer, the keyboard or
//! a panel does can change it; a copy of one's own can be made.

use crate::actions::Action;
use crate::camera::ScreenPoint;
use crate::editor::Editor;
use model::Job;
use words::say;

impl Action {
    /// Whether the action is for changing a job, or for keeping and opening jobs: none of these exist where one only looks.
    #[must_use]
    pub fn changes(self) -> bool {
        matches!(
            self,
            Self::PullRun
                | Self::OpenShelf
                | Self::Rename
                | Self::Turn
                | Self::TurnBack
                | Self::Delete
                | Self::Undo
                | Self::Redo
                | Self::Cut
                | Self::Paste
                | Self::Duplicate
                | Self::Splice
                | Self::MoveEnd
                | Self::NextBend
                | Self::Straighten
                | Self::TidySheet
                | Self::MendFinding
                | Self::MendAll
                | Self::KeepReading
                | Self::Record
                | Self::RouteAll
                | Self::SizeIt
                | Self::Thread
                | Self::Papers
                | Self::OpenFile
                | Self::SaveFile
                | Self::NewJob
                | Self::StartSystem
                | Self::Jobs
                | Self::Lessons
                | Self::MakeLesson
                | Self::Share
                | Self::Limits
        )
    }
    /// Whether the action tells what is wrong, or leads away: none of these exist in an exercise.
    #[must_use]
    pub fn tells(self) -> bool {
        matches!(
            self,
            Self::Ask
                | Self::NextFinding
                | Self::PreviousFinding
                | Self::OverlayCurrent
                | Self::OverlayVoltage
                | Self::OverlayHeat
                | Self::OverlayProtection
                | Self::OverlaySignal
                | Self::OverlaySpeakers
                | Self::Readings
                | Self::FindFault
                | Self::Prove
                | Self::BreakIt
                | Self::Outline
                | Self::LayUnder
                | Self::SheetBefore
                | Self::SheetAfter
                | Self::BodyPlan
                | Self::Keys
        )
    }
}

impl Action {
    /// Whether the action shows or hands out what an analysis finds. Asked of a job that was not looked through yet, it does not
    /// answer that there is nothing.
    pub(crate) fn looks_through(self) -> bool {
        self.tells()
            || matches!(
                self,
                Self::WhatFeeds
                    | Self::Meter
                    | Self::MeterVolts
                    | Self::MeterAmps
                    | Self::MeterTone
                    | Self::MeterOhms
                    | Self::KeepReading
                    | Self::MendFinding
                    | Self::MendAll
                    | Self::Thread
                    | Self::Papers
                    | Self::SizeIt
                    | Self::ExportSvg
                    | Self::ExportPng
                    | Self::Print
            )
    }
}

impl Editor {
    /// Puts a job on the table that is only looked at.
    #[must_use]
    pub fn looking(job: Job) -> Self {
        let mut this = Self::unstudied(job);
        this.looks_only = true;
        this.analyse();
        this
    }
    /// Puts a job on the table for an exercise: it is only looked at, and neither findings nor numbers tell what is wrong with
    /// it. The meter and what feeds a thing stay: a fault is found by measuring.
    #[must_use]
    pub fn exercise(job: Job) -> Self {
        let mut this = Self::unstudied(job);
        this.looks_only = true;
        this.conceals = true;
        this.analyse();
        this
    }
    /// Whether findings and numbers are hidden.
    #[must_use]
    pub fn conceals(&self) -> bool {
        self.conceals
    }
    /// Whether the job is only looked at.
    #[must_use]
    pub fn looks_only(&self) -> bool {
        self.looks_only
    }
    /// Whether the action can be done here.
    #[must_use]
    pub fn offers(&self, action: Action) -> bool {
        !(self.looks_only && action.changes() || self.conceals && action.tells())
    }
    /// True, and said, where nothing may be changed.
    pub(crate) fn refuses(&mut self) -> bool {
        if self.looks_only {
            self.tell(say!("look-only"));
        }
        self.looks_only
    }
    /// Where one only looks, a drag shifts the paper, wherever it begins.
    pub(crate) fn drag_shifts(&mut self, id: i32, at: ScreenPoint) -> bool {
        if self.looks_only {
            self.fingers.shift_by(id, at);
            self.hover(None);
        }
        self.looks_only
    }
}
